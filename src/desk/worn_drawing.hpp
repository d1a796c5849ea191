/// What was worn, and when reactions began, as plain numbers: where each bar and mark lies.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/reaction_log.hpp"
#include "desk/time_axis.hpp"

namespace sparewell::desk {

struct WornShape {
  std::size_t strip = 0;  ///< position in the chart's strips
  double top = 0;
  bool heading = false;
  std::vector<Stretch> worn;
};

/// The day on which a reaction began.
struct ReactionMark {
  std::size_t reaction = 0;  ///< position in the chart's reactions
  double x = 0;
  std::string number;     ///< "1" for the first reaction of all; the list says what it was
  bool recorded = false;  ///< false: a part was ended because of a reaction
};

struct WornDrawing {
  double height = 0;
  double today = 0;      ///< x of the line that marks today
  double marks_top = 0;  ///< of the row of marks, below the axis; a line goes down from each
  std::vector<Tick> ticks;
  std::vector<WornShape> rows;
  std::vector<ReactionMark> marks;

  /// The strip drawn at this height; empty outside the rows.
  [[nodiscard]] std::optional<std::size_t> strip_at(double y, double row_height) const;
  /// The mark nearest to x within `reach`.
  [[nodiscard]] std::optional<std::size_t> mark_at(double x, double reach) const;
};

/// The axis spans everything that was worn up to today.
[[nodiscard]] WornDrawing draw_worn(const WornChart& chart, const StripMeasures& measures);

/// "3 reactions; 5 parts ...": the drawing in a sentence, for screen readers.
[[nodiscard]] std::string worn_chart_words(const WornChart& chart);

/// The reactions with their numbers in the drawing, the latest first, each with what was worn.
[[nodiscard]] std::string numbered_log(const WornChart& chart);

}  // namespace sparewell::desk
