/// A stretch of days drawn from left to right.
#pragma once

#include <string>
#include <vector>

#include "clinic/date.hpp"

namespace sparewell::desk {

/// A horizontal stretch; when cut, what it stands for goes on beyond that end of the axis.
struct Stretch {
  double from = 0;
  double to = 0;
  bool cut_from = false;
  bool cut_to = false;
};

struct Tick {
  double x = 0;
  std::string label;
};

/// Pixels that the painter measured beforehand.
struct StripMeasures {
  double width = 0;  ///< of the whole drawing
  double label_width = 0;
  double row_height = 0;
  double axis_height = 0;
  double tick_label_width = 0;  ///< of the widest label of a tick
};

struct TimeAxis {
  Date from;
  Date to;
  double left = 0;
  double right = 0;

  /// Days beyond its ends lie at them.
  [[nodiscard]] double x(Date date) const;
  /// From one day to another, which is not drawn before it.
  [[nodiscard]] Stretch stretch(Date a, Date b) const;
  /// First days of months, as close together as labels of that width allow. They lie on the same
  /// months whatever the first day is, so that charts can be compared.
  [[nodiscard]] std::vector<Tick> ticks(double label_width) const;
};

/// Right of the labels, with half a row free at its end.
[[nodiscard]] TimeAxis time_axis(Date from, Date to, const StripMeasures& measures);

}  // namespace sparewell::desk
