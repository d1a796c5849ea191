#include "desk/picture/life_picture.hpp"

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/time_marks.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

void add_median(Picture& picture, Spot at, double size) {
  picture.marks.emplace_back(Sign{at, SignForm::diamond, size, Ink::text, true});
}

/// Filled when that day has passed.
void add_order_by(Picture& picture, Spot at, double size, bool passed) {
  picture.marks.emplace_back(Sign{at, SignForm::flag, size, Ink::text, passed});
}

void add_row(Picture& picture, const Room& room, const StripMeasures& measures,
             const StripEntry& entry, const StripShape& row) {
  if (row.heading) return add_heading(picture, room, measures, entry.heading, row.top);
  add_strip_label(picture, room, measures, entry.label, row.top);
  add_life(picture, room, row, row.top + measures.row_height / 2, measures.row_height);
  picture.stops.push_back({entry.id, entry.words, row_area(measures, row.top)});
}

FigureTable table_of(const std::vector<StripEntry>& entries) {
  FigureTable table;
  table.headings = {say("Group"),
                    say("Part"),
                    say("Issued"),
                    say("Ended"),
                    say("1 in 10 worn out by"),
                    say("Even chance by"),
                    say("9 in 10 worn out by"),
                    say("Order by")};
  std::string group;
  for (const auto& entry : entries) {
    if (!entry.heading.empty()) {
      group = entry.heading;
      continue;
    }
    const auto day = [](const std::optional<Date>& date) { return date_words(date, ""); };
    table.rows.push_back({group, entry.label, date_words(entry.issued), day(entry.ended),
                          day(entry.p10), day(entry.p50), day(entry.p90), day(entry.order_by)});
  }
  return table;
}

/// Each part in the sentences of its strip.
std::string words_of(const std::vector<StripEntry>& entries) {
  if (entries.empty()) return say("No part is drawn.");
  std::string text;
  for (const auto& entry : entries) {
    if (!text.empty()) text += '\n';
    text += entry.heading.empty() ? entry.words : fmt::format("{}:", entry.heading);
  }
  return fmt::format("{}\n{}", text, care_caution());
}

Picture draw(const std::vector<StripEntry>& entries, const std::string& reference, Date today,
             const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.title = say("Lives of the parts of {} on {}", reference, date_words(today));
  picture.words = words_of(entries);
  picture.table = table_of(entries);
  if (entries.empty()) return picture;
  std::vector<std::string> labels;
  labels.reserve(entries.size());
  for (const auto& entry : entries) labels.push_back(entry.label);
  const double top = add_key(picture, room, life_key(room.unit), 0);
  const auto measures = strip_measures(room, labels, top);
  const auto drawing = draw_lives(entries, today, measures);
  picture.fixed_top = measures.axis_height;
  picture.height = drawing.height;
  add_axis(picture, room, drawing.ticks, measures.axis_height, drawing.height, drawing.today);
  for (const auto& row : drawing.rows) {
    add_row(picture, room, measures, entries[row.entry], row);
  }
  return picture;
}

}  // namespace

void add_life(Picture& picture, const Room& room, const StripShape& life, double middle,
              double row_height) {
  const double thick = row_height * 0.42;
  if (life.worn) add_past(picture, room, *life.worn, middle, 0.6 * thick);
  if (life.ahead) add_ahead(picture, room, *life.ahead, middle, thick);
  if (life.median) add_median(picture, {*life.median, middle}, 0.7 * thick);
  if (life.order_by) {
    add_order_by(picture, {*life.order_by, middle}, row_height * 0.38, life.order_by_passed);
  }
}

std::vector<KeySign> life_key(double unit) {
  const double thick = 9 * unit;
  const auto stretch = [](const Area& area) {
    return Stretch{area.left, area.right, false, false};
  };
  Room room;
  room.unit = unit;
  return {{say("worn so far"),
           [=](Picture& picture, const Area& area) {
             add_past(picture, room, stretch(area), middle_y(area), 0.7 * thick);
           }},
          {say("today"),
           [=](Picture& picture, const Area& area) {
             add_line(picture, {middle_x(area), middle_y(area) - thick},
                      {middle_x(area), middle_y(area) + thick}, Ink::text, 2);
           }},
          {say("8 in 10 wear out here"),
           [=](Picture& picture, const Area& area) {
             add_ahead(picture, room, stretch(area), middle_y(area), thick);
           }},
          {say("even chance"),
           [=](Picture& picture, const Area& area) {
             add_median(picture, {middle_x(area), middle_y(area)}, 0.7 * thick);
           }},
          {say("order by (filled: passed)"), [=](Picture& picture, const Area& area) {
             add_order_by(picture, {middle_x(area), middle_y(area)}, 0.8 * thick, false);
           }}};
}

picture::Maker life_picture(std::vector<StripEntry> entries, std::string reference, Date today) {
  return [entries = std::move(entries), reference = std::move(reference),
          today](const picture::Room& room) { return draw(entries, reference, today, room); };
}

}  // namespace sparewell::desk
