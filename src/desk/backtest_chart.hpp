/// The drawn result of a test of the forecasts as plain numbers: where each mark, bar and tick
/// lies.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "desk/life_strip.hpp"
#include "wear/backtest.hpp"

namespace sparewell::desk {

inline constexpr std::size_t span_count = wear::coverage_levels.size();
/// Ours, the fixed calendar interval, one law for the kind.
inline constexpr std::size_t forecaster_count = 3;

/// What is drawn of one kind, or of all.
struct ScoreEntry {
  std::string id;
  std::string label;
  std::string words;  ///< the same figures in sentences, for tooltips and screen readers
  std::array<std::optional<wear::Coverage>, span_count> coverage;
  std::optional<wear::Compared> error;
};

/// Pixels that the painter measured beforehand.
struct ChartMeasures {
  double width = 0;  ///< of the whole drawing
  double label_width = 0;
  double row_height = 0;
  double axis_height = 0;
  double gap = 0;               ///< between the two panels, and right of the second
  double tick_label_width = 0;  ///< of the widest label of a tick
};

/// A share of endings with its interval.
struct CoverageMark {
  double x = 0;
  double low = 0;
  double high = 0;
  double y = 0;  ///< its middle
};

struct ErrorBar {
  double to = 0;  ///< its end; it begins at the left of the panel
  double top = 0;
  double height = 0;
};

struct ScoreShape {
  std::size_t entry = 0;  ///< position in the entries
  double top = 0;
  std::array<std::optional<CoverageMark>, span_count> marks;  ///< in the order of coverage_levels
  std::array<std::optional<ErrorBar>, forecaster_count> errors;
};

struct Panel {
  double left = 0;
  double right = 0;
};

struct BacktestDrawing {
  double height = 0;
  Panel coverage;
  Panel errors;
  /// Where marks should lie: one line for each of coverage_levels, labelled with it.
  std::vector<Tick> nominal;
  std::vector<Tick> error_ticks;  ///< in days, from 0
  std::vector<ScoreShape> rows;

  /// The entry drawn at this height; empty over the axis and below the last row.
  [[nodiscard]] std::optional<std::size_t> entry_at(double y, double row_height) const;
};

/// Left the coverage, from somewhat below the least of all figures to 100 %; right the errors, from
/// 0 to somewhat above the greatest. Rows are in the order of the entries, below the axis.
[[nodiscard]] BacktestDrawing draw_scores(const std::vector<ScoreEntry>& entries,
                                          const ChartMeasures& measures);

}  // namespace sparewell::desk
