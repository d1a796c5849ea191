/// The drawn lives of units as plain numbers: where each bar, mark and tick lies.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/time_axis.hpp"

namespace sparewell::desk {

/// One unit's life as it is drawn; or, with a heading, a line of text between strips.
struct StripEntry {
  std::string heading;  ///< not empty: only this text is drawn
  std::string id;
  std::string label;  ///< left of the strip
  std::string words;  ///< the same life in a sentence, for tooltips and screen readers
  Date issued;
  std::optional<Date> ended;  ///< then no forecast is drawn
  std::optional<Date> p10;
  std::optional<Date> p50;
  std::optional<Date> p90;
  std::optional<Date> order_by;
};

struct StripShape {
  std::size_t entry = 0;  ///< position in the entries
  double top = 0;
  bool heading = false;
  std::optional<Stretch> worn;   ///< from issue to today, or to the end
  std::optional<Stretch> ahead;  ///< from p10 to p90
  std::optional<double> median;
  std::optional<double> order_by;
  bool order_by_passed = false;  ///< the order-by date lies before today and is drawn at today
};

struct LifeDrawing {
  double height = 0;
  double today = 0;  ///< x of the line that marks today
  std::vector<Tick> ticks;
  std::vector<StripShape> rows;

  /// The entry drawn at this height; empty over the axis and below the last row.
  [[nodiscard]] std::optional<std::size_t> entry_at(double y, double row_height) const;
};

/// The axis spans every life as far as one year back and two ahead of today; what lies beyond is
/// cut. Rows are in the order of the entries, below the axis.
[[nodiscard]] LifeDrawing draw_lives(const std::vector<StripEntry>& entries, Date today,
                                     const StripMeasures& measures);

}  // namespace sparewell::desk
