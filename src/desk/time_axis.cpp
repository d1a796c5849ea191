#include "desk/time_axis.hpp"

#include <algorithm>
#include <array>

#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using std::chrono::months;
using std::chrono::year_month;
using std::chrono::year_month_day;

Date first_of(const year_month& month) {
  return Date{month / std::chrono::day{1}};
}

/// Months between ticks, so that their labels do not touch.
int tick_step(const TimeAxis& axis, double label_width) {
  constexpr std::array<int, 6> steps{1, 2, 3, 6, 12, 24};
  const auto span_days = static_cast<double>((axis.to - axis.from).count());
  const auto month_width = (axis.right - axis.left) / span_days * 30.44;
  const auto fits = std::ranges::find_if(
      steps, [&](int step) { return step * month_width >= 1.25 * label_width; });
  return fits == steps.end() ? steps.back() : *fits;
}

}  // namespace

double TimeAxis::x(Date date) const {
  const auto share =
      static_cast<double>((date - from).count()) / static_cast<double>((to - from).count());
  return left + std::clamp(share, 0.0, 1.0) * (right - left);
}

Stretch TimeAxis::stretch(Date a, Date b) const {
  return {x(a), x(std::max(a, b)), a<from, b> to};
}

std::vector<Tick> TimeAxis::ticks(double label_width) const {
  const auto step = tick_step(*this, label_width);
  const year_month_day start{from};
  const auto january = start.year() / std::chrono::January;
  std::vector<Tick> made;
  for (int i = 0;; i += step) {
    const auto month = january + months{i};
    const auto date = first_of(month);
    if (date > to) return made;
    if (date < from) continue;
    made.push_back({x(date), month_words(date)});
  }
}

TimeAxis time_axis(Date from, Date to, const StripMeasures& measures) {
  return {from, to, measures.label_width,
          std::max(measures.width - measures.row_height / 2, measures.label_width + 1)};
}

}  // namespace sparewell::desk
