/// What was played as rows of a table and points of a drawing.
#pragma once

#include <vector>

#include "desk/play_chart.hpp"
#include "desk/table.hpp"
#include "supply/play/simulate.hpp"

namespace sparewell::desk {

/// Positions in Played::runs of the steps worth looking at, in their order: of ours all from a
/// service target of 80 % on, of min-max those that no other step of it beats.
[[nodiscard]] std::vector<std::size_t> runs_to_show(const supply::play::Played& played);

[[nodiscard]] std::vector<Column> run_columns();
/// A row's id is the position of its run.
[[nodiscard]] std::vector<TableRow> run_rows(const supply::play::Played& played, double service);
[[nodiscard]] std::vector<PlayCurve> play_curves(const supply::play::Played& played,
                                                 double service);

}  // namespace sparewell::desk
