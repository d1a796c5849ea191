#include "desk/limb_chart.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "care/fit.hpp"
#include "clinic/say.hpp"
#include "desk/length_words.hpp"
#include "desk/time_axis.hpp"
#include "desk/trend_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr int trend_points = 48;
constexpr days least_days_drawn{60};

/// Sizes of what is worn on the side, by the height at which they are stated.
std::map<double, std::vector<SizeBand>> worn_sizes(const Clinic& clinic, const PatientRef& patient,
                                                   Side side, Date today) {
  const ClinicIndex index{clinic};
  std::map<double, std::set<ItemCode>> items;
  for (const Unit& unit : clinic.units) {
    if (unit.patient != patient || unit.side != side || !unit.in_use_on(today)) continue;
    const Item* item = index.item(unit.item);
    if (item == nullptr || !item->size_at_cm || !care::has_size(*item)) continue;
    items[*item->size_at_cm].insert(item->code);
  }
  std::map<double, std::vector<SizeBand>> made;
  for (const auto& [height, codes] : items) {
    for (const ItemCode& code : codes) {
      const Item& item = *index.item(code);
      const auto same = std::ranges::find_if(made[height], [&](const SizeBand& band) {
        return band.min_cm == item.size_min_cm && band.max_cm == item.size_max_cm;
      });
      if (same != made[height].end()) {
        same->label += ", " + code.text;
      } else {
        made[height].push_back({code.text, item.size_min_cm, item.size_max_cm});
      }
    }
  }
  return made;
}

std::string sentence_of(const LimbCurve& curve, const std::optional<care::LimbTrend>& trend) {
  auto words =
      say("{}: {}, the last {}.", curve.name,
          count_words(static_cast<long long>(curve.dots.size()), "measurement", "measurements"),
          reading_words(curve.dots.back()));
  if (trend) {
    words += say(" {} Foreseen on {}: {}.", change_words(*trend), date_words(curve.until),
                 prediction_words(trend->on(curve.until)));
  }
  for (const SizeBand& size : curve.sizes) {
    Item item;
    item.size_min_cm = size.min_cm;
    item.size_max_cm = size.max_cm;
    words += say(" {} is for {}.", size.label, range_words(item));
  }
  return words;
}

LimbCurve curve_of(const LimbRecords& limbs, const PatientRef& patient, Side side, double at_cm,
                   std::vector<care::LimbReading> readings, std::vector<SizeBand> sizes,
                   std::pair<Date, Date> today_until) {
  const auto [today, until] = today_until;
  LimbCurve made;
  made.name = side == Side::left ? say("Left, {} above the end", short_length_words(at_cm))
                                 : say("Right, {} above the end", short_length_words(at_cm));
  made.today = today;
  made.until = until;
  made.sizes = std::move(sizes);
  const auto trend = limbs.trend(patient, side, readings, today);
  if (trend) {
    const Date from = trend->readings().front().day;
    const int span = std::max(1, days_between(from, until));
    for (int i = 0; i <= trend_points; ++i) {
      const Date day = from + days{span * i / trend_points};
      made.trend.emplace_back(day, trend->on(day));
    }
  }
  made.dots = std::move(readings);
  made.dot_words.reserve(made.dots.size());
  for (const auto& dot : made.dots) made.dot_words.push_back(reading_words(dot));
  made.words = sentence_of(made, trend);
  return made;
}

struct Extent {
  double least = 0;
  double most = 0;
  void take(double cm) {
    least = std::min(least, cm);
    most = std::max(most, cm);
  }
};

/// Around everything, with some room; an end of a size only where it is near.
Extent extent_of(const LimbCurve& curve) {
  Extent extent{curve.dots.front().circumference_cm, curve.dots.front().circumference_cm};
  for (const auto& dot : curve.dots) extent.take(dot.circumference_cm);
  for (const auto& [day, at] : curve.trend) {
    extent.take(at.low_cm);
    extent.take(at.high_cm);
  }
  const double near = 0.15 * extent.most;
  const Extent measured = extent;
  for (const auto& size : curve.sizes) {
    for (const auto& end : {size.min_cm, size.max_cm}) {
      if (end && *end > measured.least - near && *end < measured.most + near) extent.take(*end);
    }
  }
  const double room = std::max(0.3, 0.08 * (extent.most - extent.least));
  return {extent.least - room, extent.most + room};
}

/// How many units of the axis lie between two lines.
double axis_step(double span, double rows) {
  constexpr std::array<double, 7> steps{0.2, 0.5, 1, 2, 5, 10, 20};
  const auto found = std::ranges::find_if(steps, [&](double step) { return span / step <= rows; });
  return found == steps.end() ? steps.back() : *found;
}

/// At whole steps of the unit that lengths are shown in.
template <class Place>
std::vector<Tick> length_ticks(const Extent& extent, double rows, Place y) {
  const double unit_cm = cm_of_unit();
  const double step = axis_step((extent.most - extent.least) / unit_cm, rows);
  const auto first = static_cast<int>(std::ceil(extent.least / unit_cm / step));
  std::vector<Tick> ticks;
  for (int tick = first; tick * step * unit_cm <= extent.most; ++tick) {
    const double at = tick * step;
    ticks.push_back(
        {y(at * unit_cm), say("{:.{}f} {}", at, step < 1 ? 1 : 0, length_unit_words())});
  }
  return ticks;
}

}  // namespace

std::optional<std::size_t> LimbDrawing::dot_at(double x, double y, double reach) const {
  std::optional<std::size_t> nearest;
  for (std::size_t i = 0; i < dots.size(); ++i) {
    const double distance = std::hypot(dots[i].x - x, dots[i].y - y);
    if (distance > reach) continue;
    reach = distance;
    nearest = i;
  }
  return nearest;
}

std::vector<LimbCurve> limb_curves(const Clinic& clinic, const PatientRef& patient, Date today,
                                   Date until) {
  const LimbRecords limbs{clinic, patient};
  std::vector<LimbCurve> made;
  for (const Side side : {Side::left, Side::right}) {
    const auto sizes = worn_sizes(clinic, patient, side, today);
    std::vector<double> heights;
    heights.reserve(sizes.size());
    for (const auto& [height, bands] : sizes) heights.push_back(height);
    for (const double height : limbs.heights(patient, side, today)) {
      if (!sizes.contains(height)) heights.push_back(height);
    }
    for (const double height : heights) {
      auto readings = limbs.readings(patient, side, height, today);
      if (readings.empty()) continue;
      const auto worn = sizes.find(height);
      made.push_back(curve_of(limbs, patient, side, height, std::move(readings),
                              worn == sizes.end() ? std::vector<SizeBand>{} : worn->second,
                              {today, until}));
    }
  }
  return made;
}

LimbDrawing draw_limb(const LimbCurve& curve, const LimbMeasures& measures) {
  LimbDrawing drawing;
  drawing.across = {measures.left, std::max(measures.left + 1, measures.width - measures.right)};
  drawing.top = measures.top;
  drawing.bottom = std::max(measures.top + 1, measures.height - measures.bottom);
  const Date first = std::min(curve.dots.front().day, curve.today - least_days_drawn);
  const TimeAxis axis{first - days{10},
                      std::max(curve.until, curve.today + least_days_drawn) + days{10},
                      drawing.across.left, drawing.across.right};
  const Extent extent = extent_of(curve);
  const double high = drawing.bottom - drawing.top;
  const auto y = [&](double cm) {
    const double share = (cm - extent.least) / (extent.most - extent.least);
    return drawing.bottom - high * std::clamp(share, 0.0, 1.0);
  };
  drawing.month_ticks = axis.ticks(measures.tick_label_width);
  const double rows = std::max(1.0, high / (1.8 * std::max(1.0, measures.line_height)));
  drawing.cm_ticks = length_ticks(extent, rows, y);
  for (const auto& size : curve.sizes) {
    const auto within = [&](const std::optional<double>& end) {
      return end && *end > extent.least && *end < extent.most;
    };
    drawing.sizes.push_back({size.label, y(size.max_cm.value_or(extent.most)),
                             y(size.min_cm.value_or(extent.least)), within(size.max_cm),
                             within(size.min_cm)});
    double& bottom = drawing.sizes.back().label_bottom;
    bottom = drawing.sizes.back().bottom;
    // Those before it, each at most once: a label that was moved up does not come down again.
    for (std::size_t i = 0; i + 1 < drawing.sizes.size(); ++i) {
      const auto taken = [&](const DrawnSize& other) {
        return &other != &drawing.sizes.back() &&
               std::abs(other.label_bottom - bottom) < measures.line_height;
      };
      if (std::ranges::any_of(drawing.sizes, taken)) bottom -= measures.line_height;
    }
  }
  for (const auto& dot : curve.dots) {
    drawing.dots.push_back({axis.x(dot.day), y(dot.circumference_cm)});
  }
  for (const auto& [day, at] : curve.trend) {
    drawing.middle.push_back({axis.x(day), y(at.circumference_cm)});
    drawing.low.push_back({axis.x(day), y(at.low_cm)});
    drawing.high.push_back({axis.x(day), y(at.high_cm)});
  }
  drawing.today = axis.x(curve.today);
  return drawing;
}

}  // namespace sparewell::desk
