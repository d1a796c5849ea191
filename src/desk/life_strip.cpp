#include "desk/life_strip.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using std::chrono::months;
using std::chrono::year_month;
using std::chrono::year_month_day;

constexpr days furthest_back{365};
constexpr days furthest_ahead{2 * 365};
constexpr days least_span{120};
constexpr days margin{10};

struct Axis {
  Date from;
  Date to;
  double left = 0;
  double right = 0;

  [[nodiscard]] double x(Date date) const {
    const auto share =
        static_cast<double>((date - from).count()) / static_cast<double>((to - from).count());
    return left + std::clamp(share, 0.0, 1.0) * (right - left);
  }
  [[nodiscard]] Stretch stretch(Date a, Date b) const {
    return {x(a), x(std::max(a, b)), a<from, b> to};
  }
};

Axis axis_of(const std::vector<StripEntry>& entries, Date today, const StripMeasures& measures) {
  Date first = today - least_span;
  Date last = today + least_span;
  for (const auto& entry : entries) {
    if (!entry.heading.empty()) continue;
    first = std::min(first, entry.issued);
    for (const auto& date : {entry.p90, entry.p50, entry.order_by}) {
      if (date) last = std::max(last, *date);
    }
  }
  first = std::max(first, today - furthest_back);
  last = std::min(last, today + furthest_ahead);
  return {first - margin, last + margin, measures.label_width,
          std::max(measures.width - measures.row_height / 2, measures.label_width + 1)};
}

Date first_of(const year_month& month) {
  return Date{month / std::chrono::day{1}};
}

/// Months between ticks, so that their labels do not touch.
int tick_step(const Axis& axis, double label_width) {
  constexpr std::array<int, 6> steps{1, 2, 3, 6, 12, 24};
  const auto span_days = static_cast<double>((axis.to - axis.from).count());
  const auto month_width = (axis.right - axis.left) / span_days * 30.44;
  const auto fits = std::ranges::find_if(
      steps, [&](int step) { return step * month_width >= 1.25 * label_width; });
  return fits == steps.end() ? steps.back() : *fits;
}

std::vector<Tick> ticks_of(const Axis& axis, double label_width) {
  const auto step = tick_step(axis, label_width);
  const year_month_day start{axis.from};
  // Ticks lie on the same months whatever the first date is, so that charts can be compared.
  const auto january = start.year() / std::chrono::January;
  std::vector<Tick> ticks;
  for (int i = 0;; i += step) {
    const auto month = january + months{i};
    const auto date = first_of(month);
    if (date > axis.to) return ticks;
    if (date < axis.from) continue;
    const auto words = short_date_words(date).substr(2);
    ticks.push_back({axis.x(date), words + " " + std::to_string(static_cast<int>(month.year()))});
  }
}

void add_forecast(StripShape& shape, const StripEntry& entry, const Axis& axis, Date today) {
  // A date beyond the hundred years that forecasts reach is drawn as going on past the axis.
  const auto late = entry.p90.value_or(axis.to + days{1});
  if (entry.p10) shape.ahead = axis.stretch(*entry.p10, late);
  if (entry.p50 && *entry.p50 <= axis.to) shape.median = axis.x(*entry.p50);
  if (!entry.order_by || *entry.order_by > axis.to) return;
  shape.order_by_passed = *entry.order_by < today;
  shape.order_by = axis.x(std::max(*entry.order_by, today));
}

}  // namespace

std::optional<std::size_t> LifeDrawing::entry_at(double y, double row_height) const {
  for (const auto& row : rows) {
    if (y >= row.top && y < row.top + row_height) return row.entry;
  }
  return std::nullopt;
}

LifeDrawing draw_lives(const std::vector<StripEntry>& entries, Date today,
                       const StripMeasures& measures) {
  const auto axis = axis_of(entries, today, measures);
  LifeDrawing drawing;
  drawing.today = axis.x(today);
  drawing.ticks = ticks_of(axis, measures.tick_label_width);
  double top = measures.axis_height;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const auto& entry = entries[i];
    StripShape shape;
    shape.entry = i;
    shape.top = top;
    shape.heading = !entry.heading.empty();
    if (!shape.heading) {
      const auto end = entry.ended.value_or(today);
      if (end >= axis.from) shape.worn = axis.stretch(entry.issued, end);
      if (!entry.ended) add_forecast(shape, entry, axis, today);
    }
    drawing.rows.push_back(shape);
    top += measures.row_height;
  }
  drawing.height = top;
  return drawing;
}

}  // namespace sparewell::desk
