/// Reads a plain table of lives for the Weibull regression.
#pragma once

#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "wear/weibull_regression.hpp"

namespace sparewell::desk {

struct LifeTableFile {
  wear::LifeTable table;
  int left_out = 0;  ///< rows with a blank or NA cell
};

/// `bytes` is CSV text with a column `time` (above 0), a column `event` (1 or yes: the life ended;
/// 0 or no: it was still going on) and any number of covariates. A covariate column with a cell that
/// is not a number holds words: each word but the first in the alphabet becomes a covariate of its
/// own, 0 or 1, named column and word together (treatment contrasts). Rows with a blank or NA cell
/// are left out and counted. A column named `group` is no covariate: rows with the same word in it
/// share a multiplier. Refuses with one sentence that names file, line and column.
[[nodiscard]] Expected<LifeTableFile> read_life_table(const std::string& name, std::string bytes,
                                                      const std::string& group = {});

}  // namespace sparewell::desk
