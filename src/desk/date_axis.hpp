/// An axis of days in a drawing.
#pragma once

#include <vector>

#include "clinic/date.hpp"
#include "desk/life_strip.hpp"

namespace sparewell::desk {

/// Precondition: `from` lies before `to`.
struct DateAxis {
  Date from;
  Date to;
  double left = 0;
  double right = 0;

  /// Days beyond an end lie at that end.
  [[nodiscard]] double x(Date date) const;
};

/// On the first of months, as many apart as leaves room between their labels, which are so wide.
/// They lie on the same months whatever the first day is, so that charts can be compared.
[[nodiscard]] std::vector<Tick> month_ticks(const DateAxis& axis, double label_width);

}  // namespace sparewell::desk
