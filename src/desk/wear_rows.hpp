/// The rows of the lists on the page "Wear".
#pragma once

#include <vector>

#include "desk/backtest_chart.hpp"
#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

[[nodiscard]] std::vector<Column> score_columns();
[[nodiscard]] std::vector<TableRow> score_rows(const wear::Backtest& test);
/// One entry for each of score_rows(), with the same id.
[[nodiscard]] std::vector<ScoreEntry> score_entries(const wear::Backtest& test);

[[nodiscard]] std::vector<Column> effect_columns();
[[nodiscard]] std::vector<TableRow> effect_rows(const wear::ClinicLife& fitted,
                                                const wear::PriorTable& priors);

[[nodiscard]] std::vector<Column> flag_columns();
/// Flagged lots, then flagged items. The id of row i of the lots is "lot i", of the items "item i".
[[nodiscard]] std::vector<TableRow> flag_rows(const Day& day);

[[nodiscard]] std::vector<Column> early_columns();
/// Parts of flagged lots and items first, then the least chance first.
[[nodiscard]] std::vector<TableRow> early_rows(const Day& day);

}  // namespace sparewell::desk
