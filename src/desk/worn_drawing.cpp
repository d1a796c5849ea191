#include "desk/worn_drawing.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr days margin{20};

/// Reactions are kept with the latest first and numbered from the first on.
std::size_t number_of(const WornChart& chart, std::size_t reaction) {
  return chart.reactions.size() - reaction;
}

}  // namespace

std::optional<std::size_t> WornDrawing::strip_at(double y, double row_height) const {
  for (const auto& row : rows) {
    if (y >= row.top && y < row.top + row_height) return row.strip;
  }
  return std::nullopt;
}

std::optional<std::size_t> WornDrawing::mark_at(double x, double reach) const {
  const auto nearest = std::ranges::min_element(
      marks, {}, [&](const ReactionMark& mark) { return std::abs(mark.x - x); });
  if (nearest == marks.end() || std::abs(nearest->x - x) > reach) return std::nullopt;
  return nearest->reaction;
}

WornDrawing draw_worn(const WornChart& chart, const StripMeasures& measures) {
  const auto axis = time_axis(chart.from - margin, chart.today + margin, measures);
  WornDrawing drawing;
  drawing.today = axis.x(chart.today);
  drawing.ticks = axis.ticks(measures.tick_label_width);
  drawing.marks_top = measures.axis_height;
  double top = drawing.marks_top + measures.row_height;
  for (std::size_t i = 0; i < chart.strips.size(); ++i) {
    WornShape shape{i, top, !chart.strips[i].heading.empty(), {}};
    for (const auto& span : chart.strips[i].worn) {
      shape.worn.push_back(axis.stretch(span.from, std::min(span.until, chart.today)));
    }
    drawing.rows.push_back(std::move(shape));
    top += measures.row_height;
  }
  for (std::size_t i = 0; i < chart.reactions.size(); ++i) {
    const LogEntry& entry = chart.reactions[i];
    drawing.marks.push_back(
        {i, axis.x(entry.day), std::to_string(number_of(chart, i)), entry.recorded.has_value()});
  }
  drawing.height = top;
  return drawing;
}

std::string worn_chart_words(const WornChart& chart) {
  std::vector<std::string> items;
  for (const auto& strip : chart.strips) {
    items.push_back(strip.heading.empty() ? strip.words : strip.heading + ":");
  }
  return fmt::format(
      "{}. {}",
      count_words(static_cast<long long>(chart.reactions.size()), "reaction", "reactions"),
      fmt::join(items, " "));
}

std::string numbered_log(const WornChart& chart) {
  std::string text;
  for (std::size_t i = 0; i < chart.reactions.size(); ++i) {
    const LogEntry& entry = chart.reactions[i];
    std::vector<std::string> worn;
    for (const auto& part : entry.worn) worn.push_back(worn_words(part, entry.day));
    text += say("{}. {} Worn then: {}.\n", number_of(chart, i), entry_words(entry),
                worn.empty() ? std::string{said("no part is recorded")} : list_words(worn));
  }
  return text.empty() ? said("No reaction is recorded, which says nothing about the patient.\n")
                      : text;
}

}  // namespace sparewell::desk
