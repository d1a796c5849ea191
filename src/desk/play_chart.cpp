#include "desk/play_chart.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// 1, 2 or 5 times a power of ten, so that at most `ticks` steps reach `greatest`.
double nice_step(double greatest, double ticks) {
  const double least = greatest / std::max(1.0, ticks);
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (times * power >= least) return times * power;
  }
  return 10 * power;
}

struct Extent {
  double greatest_stock = 0;
  double least_share = 1;
};

Extent extent_of(const std::vector<PlayCurve>& curves) {
  Extent extent;
  for (const PlayCurve& curve : curves) {
    for (const PlayPoint& point : curve.points) {
      if (point.fill_rate < lowest_drawn_share) continue;
      extent.greatest_stock = std::max(extent.greatest_stock, point.stock);
      extent.least_share = std::min(extent.least_share, point.fill_rate);
    }
  }
  if (!(extent.greatest_stock > 0)) extent.greatest_stock = 1;
  // Hundredths, so that small differences near the top can be seen, with room below the least.
  extent.least_share = std::floor(20 * extent.least_share - 0.2) / 20;
  return extent;
}

}  // namespace

std::optional<std::size_t> PlayDrawing::mark_at(double x, double y, double reach) const {
  std::optional<std::size_t> nearest;
  double least = reach;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const double distance = std::hypot(marks[i].x - x, marks[i].y - y);
    if (distance > least) continue;
    least = distance;
    nearest = i;
  }
  return nearest;
}

PlayDrawing draw_play(const std::vector<PlayCurve>& curves, const PlayMeasures& measures) {
  const Extent extent = extent_of(curves);
  PlayDrawing drawing;
  drawing.across = {measures.left, std::max(measures.left + 1, measures.width - measures.right)};
  drawing.top = measures.top;
  drawing.bottom = std::max(measures.top + 1, measures.height - measures.bottom);
  const double greatest = 1.05 * extent.greatest_stock;
  const double wide = drawing.across.right - drawing.across.left;
  const double high = drawing.bottom - drawing.top;
  const auto x = [&](double stock) { return drawing.across.left + wide * stock / greatest; };
  const auto y = [&](double share) {
    return drawing.top + high * (1 - share) / (1 - extent.least_share);
  };
  const double step =
      nice_step(greatest, std::floor(wide / (1.5 * std::max(1.0, measures.tick_label_width))));
  for (int i = 0; i * step <= greatest; ++i) {
    drawing.stock_ticks.push_back({x(i * step), number_words(std::llround(i * step))});
  }
  const double rows = std::max(1.0, std::floor(high / (2 * std::max(1.0, measures.line_height))));
  const double part = std::max(0.01, nice_step(1 - extent.least_share, rows));
  for (int i = 0; 1 - i * part >= extent.least_share - 1e-9; ++i) {
    drawing.fill_rate_ticks.push_back(
        {y(1 - i * part), fmt::format("{:.0f} %", 100 * (1 - i * part))});
  }
  for (std::size_t c = 0; c < curves.size(); ++c) {
    for (std::size_t p = 0; p < curves[c].points.size(); ++p) {
      const PlayPoint& point = curves[c].points[p];
      if (point.fill_rate < lowest_drawn_share) continue;
      drawing.marks.push_back({c, p, x(point.stock), y(point.fill_rate)});
    }
  }
  return drawing;
}

}  // namespace sparewell::desk
