#include "desk/date_axis.hpp"

#include <algorithm>
#include <array>

#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using std::chrono::months;
using std::chrono::year_month_day;

/// Months between ticks, so that their labels do not touch.
int tick_step(const DateAxis& axis, double label_width) {
  constexpr std::array<int, 6> steps{1, 2, 3, 6, 12, 24};
  const auto span_days = static_cast<double>((axis.to - axis.from).count());
  const auto month_width = (axis.right - axis.left) / span_days * 30.44;
  const auto fits = std::ranges::find_if(
      steps, [&](int step) { return step * month_width >= 1.25 * label_width; });
  return fits == steps.end() ? steps.back() : *fits;
}

}  // namespace

double DateAxis::x(Date date) const {
  const auto share =
      static_cast<double>((date - from).count()) / static_cast<double>((to - from).count());
  return left + std::clamp(share, 0.0, 1.0) * (right - left);
}

std::vector<Tick> month_ticks(const DateAxis& axis, double label_width) {
  const auto step = tick_step(axis, label_width);
  const auto january = year_month_day{axis.from}.year() / std::chrono::January;
  std::vector<Tick> ticks;
  for (int i = 0;; i += step) {
    const auto month = january + months{i};
    const Date date{month / std::chrono::day{1}};
    if (date > axis.to) return ticks;
    if (date < axis.from) continue;
    const auto words = short_date_words(date).substr(2);
    ticks.push_back({axis.x(date), words + " " + std::to_string(static_cast<int>(month.year()))});
  }
}

}  // namespace sparewell::desk
