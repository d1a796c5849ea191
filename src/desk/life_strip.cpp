#include "desk/life_strip.hpp"

#include <algorithm>

namespace sparewell::desk {
namespace {

constexpr days furthest_back{365};
constexpr days furthest_ahead{2 * 365};
constexpr days least_span{120};
constexpr days margin{10};

TimeAxis axis_of(const std::vector<StripEntry>& entries, Date today,
                 const StripMeasures& measures) {
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
  return time_axis(first - margin, last + margin, measures);
}

void add_forecast(StripShape& shape, const StripEntry& entry, const TimeAxis& axis, Date today) {
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
  drawing.ticks = axis.ticks(measures.tick_label_width);
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
