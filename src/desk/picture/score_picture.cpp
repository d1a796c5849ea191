#include "desk/picture/score_picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "clinic/say.hpp"
#include "desk/picture/draw.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

constexpr std::array<SignForm, span_count> forms{SignForm::disc, SignForm::square,
                                                 SignForm::triangle};
constexpr std::array<Fill, forecaster_count> fills{Fill::solid, Fill::hatched, Fill::none};
constexpr std::array<const char*, forecaster_count> forecasters{
    to_say("Sparewell"), to_say("fixed calendar interval"), to_say("one law for each kind")};

void add_interval(Picture& picture, double low, double high, double y, double size) {
  add_line(picture, {low, y}, {high, y}, Ink::ahead, 2);
  add_line(picture, {low, y - size}, {low, y + size}, Ink::ahead, 2);
  add_line(picture, {high, y - size}, {high, y + size}, Ink::ahead, 2);
}

void add_nominal(Picture& picture, double x, double top, double bottom) {
  add_line(picture, {x, top}, {x, bottom}, Ink::past, 1, Line::dashed);
}

void add_error(Picture& picture, std::size_t forecaster, const Area& area) {
  picture.marks.emplace_back(
      Box{area, forecaster == 0 ? Ink::ahead : Ink::past, fills.at(forecaster), Line::solid, 1, 0});
}

std::vector<KeySign> score_key(const Room& room) {
  const double size = 9 * room.unit;
  std::vector<KeySign> key;
  for (std::size_t i = 0; i < span_count; ++i) {
    key.push_back({say("{:.0f} % spans", 100 * wear::coverage_levels[i]),
                   [=](Picture& picture, const Area& area) {
                     picture.marks.emplace_back(Sign{
                         {middle_x(area), middle_y(area)}, forms[i], 0.5 * size, Ink::text, true});
                   }});
  }
  key.push_back({say("95 % interval"), [=](Picture& picture, const Area& area) {
                   add_interval(picture, area.left, area.right, middle_y(area), 0.4 * size);
                 }});
  key.push_back({say("where it should be"), [=](Picture& picture, const Area& area) {
                   add_nominal(picture, middle_x(area), middle_y(area) - size,
                               middle_y(area) + size);
                 }});
  for (std::size_t i = 0; i < forecaster_count; ++i) {
    key.push_back(
        {said(forecasters[i]), [=](Picture& picture, const Area& area) {
           const double middle = middle_y(area);
           add_error(picture, i, {area.left, middle - size / 2, area.right, middle + size / 2});
         }});
  }
  return key;
}

ChartMeasures measures_of(const std::vector<ScoreEntry>& entries, const Room& room, double key) {
  ChartMeasures measures;
  measures.width = room.width;
  measures.axis_height = 2 * room.line_height + 8 * room.unit;
  // Rows grow with the room until their marks are large enough.
  const double least = room.line_height + 6 * room.unit;
  const double high = room.height - measures.axis_height - key;
  const auto rows = static_cast<double>(std::max<std::size_t>(1, entries.size()));
  measures.row_height = std::clamp(std::floor(high / rows), least, 2.2 * least);
  measures.gap = 24 * room.unit;
  measures.tick_label_width = room.text_width("0000");
  for (const auto& entry : entries) {
    measures.label_width =
        std::max(measures.label_width, 1.1 * room.text_width(entry.label) + 24 * room.unit);
  }
  return measures;
}

void add_axes(Picture& picture, const Room& room, const ChartMeasures& measures,
              const BacktestDrawing& drawing) {
  const double top = measures.axis_height - 4 * room.unit;
  const auto label = [&](const std::string& text, double x, double y, bool strong) {
    const double half = (strong ? 1.1 : 1) * room.text_width(text) / 2;
    const double most = room.width - half - 2 * room.unit;
    add_words(picture,
              {{std::min(x, most), y}, text, Across::middle, Down::top, Ink::text, strong, 0});
  };
  const double titles = 2 * room.unit;
  const double labels = 4 * room.unit + room.line_height;
  label(say("Ended within their span"), (drawing.coverage.left + drawing.coverage.right) / 2,
        titles, true);
  label(say("Mean error in days"), (drawing.errors.left + drawing.errors.right) / 2, titles, true);
  for (const auto& tick : drawing.nominal) {
    add_nominal(picture, tick.x, top, drawing.height);
    label(tick.label, tick.x, labels, false);
  }
  for (const auto& tick : drawing.error_ticks) {
    add_line(picture, {tick.x, top}, {tick.x, drawing.height}, Ink::faint);
    label(tick.label, tick.x, labels, false);
  }
}

void add_row(Picture& picture, const Room& room, const ChartMeasures& measures,
             const BacktestDrawing& drawing, const ScoreShape& row, const ScoreEntry& entry) {
  add_words(picture, {{10 * room.unit, row.top + measures.row_height / 2},
                      entry.label,
                      Across::left,
                      Down::middle,
                      Ink::text,
                      row.entry == 0,
                      measures.label_width - 14 * room.unit});
  const double size = std::min(measures.row_height / 6, room.line_height * 0.4);
  for (std::size_t i = 0; i < row.marks.size(); ++i) {
    if (!row.marks[i]) continue;
    const auto& [x, low, high, y] = *row.marks[i];
    add_interval(picture, low, high, y, 0.8 * size);
    picture.marks.emplace_back(Sign{{x, y}, forms[i], size, Ink::text, true});
  }
  for (std::size_t i = 0; i < row.errors.size(); ++i) {
    if (!row.errors[i]) continue;
    const auto& [to, top, height] = *row.errors[i];
    add_error(picture, i, {drawing.errors.left, top, to, top + height - 1});
  }
  picture.stops.push_back(
      {entry.id, entry.words, {1, row.top, room.width - 1, row.top + measures.row_height}});
}

FigureTable table_of(const std::vector<ScoreEntry>& entries) {
  FigureTable table;
  table.headings = {say("Kind")};
  for (const double level : wear::coverage_levels) {
    table.headings.push_back(say("Within {:.0f} % spans", 100 * level));
    table.headings.push_back(say("95 % interval"));
  }
  for (const char* forecaster : forecasters) {
    table.headings.push_back(say("Mean error in days, {}", said(forecaster)));
  }
  const auto share_words = [](double share) { return fmt::format("{:.0f} %", 100 * share); };
  for (const auto& entry : entries) {
    std::vector<std::string> row{entry.label};
    for (const auto& coverage : entry.coverage) {
      row.push_back(coverage ? share_words(coverage->share) : "");
      row.push_back(
          coverage ? say("{:.0f} % to {:.0f} %", 100 * coverage->low, 100 * coverage->high) : "");
    }
    std::array<std::optional<double>, forecaster_count> errors;
    if (entry.error) {
      errors = {entry.error->sparewell, entry.error->calendar, entry.error->clinic_weibull};
    }
    for (const auto& days : errors) row.push_back(days ? fmt::format("{:.0f}", *days) : "");
    table.rows.push_back(std::move(row));
  }
  return table;
}

Picture draw(const std::vector<ScoreEntry>& entries, const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.title = say("Test of the forecasts");
  picture.table = table_of(entries);
  for (const auto& entry : entries) {
    if (!picture.words.empty()) picture.words += '\n';
    picture.words += entry.words;
  }
  if (entries.empty()) picture.words = say("The forecasts have not been tested.");
  if (entries.empty()) return picture;
  const auto key = score_key(room);
  const auto measures = measures_of(entries, room, key_height(room, key));
  const auto drawing = draw_scores(entries, measures);
  add_axes(picture, room, measures, drawing);
  for (const auto& row : drawing.rows) {
    add_row(picture, room, measures, drawing, row, entries[row.entry]);
  }
  picture.height = add_key(picture, room, key, drawing.height + 2 * room.unit);
  return picture;
}

}  // namespace

picture::Maker score_picture(std::vector<ScoreEntry> entries) {
  return [entries = std::move(entries)](const picture::Room& room) { return draw(entries, room); };
}

}  // namespace sparewell::desk
