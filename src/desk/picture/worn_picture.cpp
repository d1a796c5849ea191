#include "desk/picture/worn_picture.hpp"

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/time_marks.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// A triangle that points down, filled when the reaction is in the log.
void add_triangle(Picture& picture, Spot tip, double size, bool recorded) {
  picture.marks.emplace_back(
      Shape{{tip, {tip.x - 0.7 * size, tip.y - size}, {tip.x + 0.7 * size, tip.y - size}},
            Ink::ahead,
            recorded ? Fill::solid : Fill::none,
            Line::solid});
}

std::vector<KeySign> worn_key(const Room& room) {
  const double size = room.line_height * 0.5;
  const auto triangle = [=](bool recorded) {
    return [=](Picture& picture, const Area& area) {
      add_triangle(picture, {middle_x(area), middle_y(area) + size / 2}, size, recorded);
    };
  };
  // Worn on the limb: not the "worn" of endings, which is translated as worn out.
  return {{said_of("key of a picture", "worn"),
           [room](Picture& picture, const Area& area) {
             add_past(picture, room, {area.left, area.right, false, false}, middle_y(area),
                      7 * room.unit);
           }},
          {say("reaction, with its number in the log"), triangle(true)},
          {say("a part ended for a reaction"), triangle(false)},
          {say("today"), [room](Picture& picture, const Area& area) {
             add_line(picture, {middle_x(area), middle_y(area) - 8 * room.unit},
                      {middle_x(area), middle_y(area) + 8 * room.unit}, Ink::text, 2);
           }}};
}

void add_reaction(Picture& picture, const Room& room, const WornDrawing& drawing,
                  const ReactionMark& mark, double row_height, const std::string& words) {
  const double size = room.line_height * 0.5;
  const double bottom = drawing.marks_top + row_height - 3 * room.unit;
  add_line(picture, {mark.x, bottom}, {mark.x, drawing.height}, Ink::ahead, 1.5);
  add_triangle(picture, {mark.x, bottom}, size, mark.recorded);
  add_words(picture, {{mark.x + size * 0.9, drawing.marks_top + 2 * room.unit},
                      mark.number,
                      Across::left,
                      Down::top,
                      Ink::text,
                      false,
                      0});
  picture.stops.push_back(
      {fmt::format("reaction {}", mark.number),
       words,
       {mark.x - size, drawing.marks_top, mark.x + size + room.text_width(mark.number),
        drawing.marks_top + row_height}});
}

FigureTable table_of(const WornChart& chart) {
  FigureTable table;
  table.headings = {say("Group"), say("What"), say("From"), say("Until")};
  for (std::size_t i = chart.reactions.size(); i > 0; --i) {
    const auto& entry = chart.reactions[i - 1];
    table.rows.push_back({say("Reaction {}", chart.reactions.size() - i + 1), entry_words(entry),
                          date_words(entry.day), ""});
  }
  std::string group;
  for (const auto& strip : chart.strips) {
    if (!strip.heading.empty()) group = strip.heading;
    for (const auto& span : strip.worn) {
      table.rows.push_back({group, strip.label, date_words(span.from),
                            span.until >= chart.today ? say("today") : date_words(span.until)});
    }
  }
  return table;
}

Picture draw(const WornChart& chart, const std::string& reference, const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.title = say("What {} wore, and reactions", reference);
  picture.words = fmt::format("{}\n{}", worn_chart_words(chart), care_caution());
  picture.table = table_of(chart);
  const auto reactions = say("Reactions");
  std::vector<std::string> labels{reactions};
  for (const auto& strip : chart.strips) labels.push_back(strip.label);
  const double top = add_key(picture, room, worn_key(room), 0);
  const auto measures = strip_measures(room, labels, top);
  const auto drawing = draw_worn(chart, measures);
  picture.height = drawing.height;
  picture.fixed_top = drawing.marks_top + measures.row_height;
  add_axis(picture, room, drawing.ticks, measures.axis_height, drawing.height, drawing.today);
  add_heading(picture, room, measures, reactions, drawing.marks_top);
  for (std::size_t i = drawing.marks.size(); i > 0; --i) {
    const auto& mark = drawing.marks[i - 1];
    add_reaction(picture, room, drawing, mark, measures.row_height,
                 entry_words(chart.reactions[mark.reaction]));
  }
  for (const auto& row : drawing.rows) {
    const auto& strip = chart.strips[row.strip];
    if (row.heading) {
      add_heading(picture, room, measures, strip.heading, row.top);
      continue;
    }
    add_strip_label(picture, room, measures, strip.label, row.top);
    const double middle = row.top + measures.row_height / 2;
    for (const auto& worn : row.worn) {
      add_past(picture, room, worn, middle, measures.row_height * 0.35);
    }
    picture.stops.push_back(
        {fmt::format("strip {}", row.strip), strip.words, row_area(measures, row.top)});
  }
  return picture;
}

}  // namespace

picture::Maker worn_picture(WornChart chart, std::string reference) {
  return [chart = std::move(chart), reference = std::move(reference)](const picture::Room& room) {
    return draw(chart, reference, room);
  };
}

}  // namespace sparewell::desk
