#include "desk/backtest_chart.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

/// The coverage axis shows at least the upper part of the scale, so that small differences near the
/// levels can be seen.
constexpr double highest_start = 0.4;

struct Scale {
  Panel panel;
  double from = 0;
  double to = 1;

  [[nodiscard]] double x(double value) const {
    const auto share = std::clamp((value - from) / (to - from), 0.0, 1.0);
    return panel.left + share * (panel.right - panel.left);
  }
};

Scale coverage_scale(const std::vector<ScoreEntry>& entries, const Panel& panel) {
  double least = 1;
  for (const auto& entry : entries) {
    for (const auto& coverage : entry.coverage) {
      if (coverage) least = std::min(least, coverage->low);
    }
  }
  // Tenths, with room left of the least figure.
  const double start = std::floor(10 * least - 0.5) / 10;
  return {panel, std::clamp(start, 0.0, highest_start), 1};
}

std::array<double, forecaster_count> errors_of(const wear::Compared& error) {
  return {error.sparewell, error.calendar, error.clinic_weibull};
}

/// 1, 2 or 5 times a power of ten, so that at most `ticks` steps reach `greatest`.
double nice_step(double greatest, double ticks) {
  const double least = greatest / std::max(1.0, ticks);
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (times * power >= least) return times * power;
  }
  return 10 * power;
}

Scale error_scale(const std::vector<ScoreEntry>& entries, const Panel& panel) {
  double greatest = 0;
  for (const auto& entry : entries) {
    if (entry.error) greatest = std::max(greatest, std::ranges::max(errors_of(*entry.error)));
  }
  return {panel, 0, greatest > 0 ? 1.05 * greatest : 1};
}

std::vector<Tick> nominal_lines(const Scale& scale) {
  std::vector<Tick> lines;
  for (const double level : wear::coverage_levels) {
    lines.push_back({scale.x(level), fmt::format("{:.0f} %", 100 * level)});
  }
  return lines;
}

std::vector<Tick> day_ticks(const Scale& scale, double label_width) {
  const auto room = (scale.panel.right - scale.panel.left) / (1.5 * std::max(1.0, label_width));
  const auto step = nice_step(scale.to, std::floor(room));
  std::vector<Tick> ticks;
  for (int i = 0; i * step <= scale.to; ++i) {
    ticks.push_back({scale.x(i * step), say("{:g}", i * step)});
  }
  return ticks;
}

ScoreShape shape_of(const ScoreEntry& entry, const Scale& coverage, const Scale& errors, double top,
                    double height) {
  ScoreShape shape;
  shape.top = top;
  const double margin = height / 8;
  const double lane = (height - 2 * margin) / static_cast<double>(span_count);
  const auto lane_top = [&](std::size_t i) { return top + margin + lane * static_cast<double>(i); };
  for (std::size_t i = 0; i < span_count; ++i) {
    if (const auto& share = entry.coverage[i]) {
      shape.marks[i] = {coverage.x(share->share), coverage.x(share->low), coverage.x(share->high),
                        lane_top(i) + lane / 2};
    }
  }
  if (!entry.error) return shape;
  const auto days = errors_of(*entry.error);
  for (std::size_t i = 0; i < days.size(); ++i) {
    shape.errors[i] = {errors.x(days[i]), lane_top(i), lane};
  }
  return shape;
}

}  // namespace

std::optional<std::size_t> BacktestDrawing::entry_at(double y, double row_height) const {
  for (const auto& row : rows) {
    if (y >= row.top && y < row.top + row_height) return row.entry;
  }
  return std::nullopt;
}

BacktestDrawing draw_scores(const std::vector<ScoreEntry>& entries, const ChartMeasures& measures) {
  const double panel_width =
      std::max(1.0, (measures.width - measures.label_width - 2 * measures.gap) / 2);
  BacktestDrawing drawing;
  drawing.coverage = {measures.label_width, measures.label_width + panel_width};
  drawing.errors = {drawing.coverage.right + measures.gap,
                    drawing.coverage.right + measures.gap + panel_width};
  const auto coverage = coverage_scale(entries, drawing.coverage);
  const auto errors = error_scale(entries, drawing.errors);
  drawing.nominal = nominal_lines(coverage);
  drawing.error_ticks = day_ticks(errors, measures.tick_label_width);
  double top = measures.axis_height;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    drawing.rows.push_back(shape_of(entries[i], coverage, errors, top, measures.row_height));
    drawing.rows.back().entry = i;
    top += measures.row_height;
  }
  drawing.height = top;
  return drawing;
}

}  // namespace sparewell::desk
