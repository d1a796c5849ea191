/// The same proposal as an office might make it otherwise: an R script, and a spreadsheet.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/proposal.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::bench {

/// Writes what both peers start from into `folder`: units.csv (item, and what is known of the life
/// of each unit in use), items.csv (stock position, days to the next order day, service target),
/// arrivals.csv (lead times of each item with their chances), and proposal.xlsx, which holds the
/// same and formulas. Stocked items only.
void write_inputs(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                  const std::filesystem::path& folder);

/// Seconds that `Rscript proposal.R folder` took without its start; it writes targets.csv. Nothing
/// when R is not there.
[[nodiscard]] std::optional<double> time_r(const std::filesystem::path& folder);

/// Seconds that LibreOffice took to load proposal.xlsx, recalculate and save it, without its start.
/// Nothing when it is not there.
[[nodiscard]] std::optional<double> time_spreadsheet(const std::filesystem::path& folder);

/// Of the targets in targets.csv, the share that equals ours, and that is off by one at most.
struct Agreement {
  int items = 0;
  double same = 0;
  double within_one = 0;
};
[[nodiscard]] Agreement compare_targets(const Clinic& clinic,
                                        const std::vector<wear::LifeOfUnit>& lives, Date today,
                                        const std::filesystem::path& folder);

}  // namespace sparewell::bench
