#include "desk/picture/limb_picture.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/length_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/plot_marks.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

std::vector<Spot> spots(const std::vector<LimbPoint>& points) {
  std::vector<Spot> made;
  made.reserve(points.size());
  for (const auto& point : points) made.push_back({point.x, point.y});
  return made;
}

void add_dot(Picture& picture, const Room& room, Spot at, bool between) {
  picture.marks.emplace_back(
      Sign{at, SignForm::disc, (between ? 3.5 : 4.5) * room.unit, Ink::text, !between});
}

std::function<void(Picture&, const Area&)> band_sign(const Room& room, Ink ink, Fill fill,
                                                     Line border) {
  const double half = 5 * room.unit;
  return [=](Picture& picture, const Area& area) {
    const double middle = middle_y(area);
    picture.marks.emplace_back(
        Box{{area.left, middle - half, area.right, middle + half}, ink, fill, border, 1, 0});
  };
}

std::vector<KeySign> limb_key(const Room& room) {
  return {{say("measured"),
           [room](Picture& picture, const Area& area) {
             add_dot(picture, room, {middle_x(area), middle_y(area)}, false);
           }},
          {say("between heights"),
           [room](Picture& picture, const Area& area) {
             add_dot(picture, room, {middle_x(area), middle_y(area)}, true);
           }},
          {say("trend"),
           [](Picture& picture, const Area& area) {
             add_line(picture, {area.left, middle_y(area)}, {area.right, middle_y(area)},
                      Ink::ahead, 2);
           }},
          {say("80 % span"), band_sign(room, Ink::ahead, Fill::hatched, Line::dotted)},
          {say("size worn"), band_sign(room, Ink::past, Fill::dotted, Line::dashed)}};
}

void add_sizes(Picture& picture, const LimbDrawing& drawing) {
  const auto& [left, right] = drawing.across;
  for (const auto& size : drawing.sizes) {
    picture.marks.emplace_back(
        Box{{left, size.top, right, size.bottom}, Ink::faint, Fill::dotted, Line::none, 1, 0});
    if (size.has_top) {
      add_line(picture, {left, size.top}, {right, size.top}, Ink::text, 1, Line::dashed);
    }
    if (size.has_bottom) {
      add_line(picture, {left, size.bottom}, {right, size.bottom}, Ink::text, 1, Line::dashed);
    }
  }
}

/// Whether a label there would cover a measurement, or the line of today.
bool covers_something(const LimbDrawing& drawing, const Area& label, double dot) {
  if (label.left - dot < drawing.today && drawing.today < label.right + dot) return true;
  return std::ranges::any_of(drawing.dots, [&](const auto& at) {
    return at.x > label.left - dot && at.x < label.right + dot && at.y > label.top - dot &&
           at.y < label.bottom + dot;
  });
}

/// As far to the left as a label covers nothing; at the left where it does everywhere.
Area place_of_label(const LimbDrawing& drawing, const Room& room, double bottom, double wide) {
  const double first = drawing.across.left + 4 * room.unit;
  const double last = drawing.across.right - wide - 4 * room.unit;
  const auto at = [&](double left) {
    return Area{left, bottom - room.line_height, left + wide, bottom};
  };
  for (double left = first; left <= last; left += room.line_height) {
    if (!covers_something(drawing, at(left), 5 * room.unit)) return at(left);
  }
  return at(first);
}

/// Over everything, on a ground of their own.
void add_size_labels(Picture& picture, const Room& room, const LimbDrawing& drawing) {
  for (const auto& size : drawing.sizes) {
    const auto label = say("worn: {}", size.label);
    const auto place = place_of_label(drawing, room, size.label_bottom - 3 * room.unit,
                                      2 * room.unit + 1.12 * room.text_width(label));
    picture.marks.emplace_back(Box{place, Ink::paper, Fill::solid, Line::none, 1, 0});
    add_words(picture, {{place.left + 2 * room.unit, place.bottom},
                        label,
                        Across::left,
                        Down::bottom,
                        Ink::text,
                        true,
                        0});
  }
}

void add_axes(Picture& picture, const Room& room, const LimbDrawing& drawing) {
  const auto& [left, right] = drawing.across;
  add_grid(picture, room, {left, drawing.top, right, drawing.bottom}, drawing.month_ticks,
           drawing.cm_ticks);
  add_line(picture, {drawing.today, drawing.top}, {drawing.today, drawing.bottom}, Ink::text);
  add_words(picture, {{drawing.today - 4 * room.unit, drawing.top + 2 * room.unit},
                      say("today"),
                      Across::right,
                      Down::top,
                      Ink::text,
                      false,
                      0});
}

void add_trend(Picture& picture, const LimbDrawing& drawing) {
  if (drawing.middle.empty()) return;
  auto band = spots(drawing.high);
  for (auto at = drawing.low.rbegin(); at != drawing.low.rend(); ++at) {
    band.push_back({at->x, at->y});
  }
  picture.marks.emplace_back(Shape{std::move(band), Ink::ahead, Fill::hatched, Line::none});
  picture.marks.emplace_back(Stroke{spots(drawing.high), Ink::ahead, Line::dotted, 1});
  picture.marks.emplace_back(Stroke{spots(drawing.low), Ink::ahead, Line::dotted, 1});
  picture.marks.emplace_back(Stroke{spots(drawing.middle), Ink::ahead, Line::solid, 2});
}

FigureTable table_of(const LimbCurve& curve) {
  FigureTable table;
  table.headings = {say("Day"), say("Circumference"), say("How it is known"), say("80 % span")};
  for (const auto& dot : curve.dots) {
    table.rows.push_back({date_words(dot.day), length_words(dot.circumference_cm),
                          dot.interpolated ? say("between heights") : say("measured"), ""});
  }
  if (!curve.trend.empty()) {
    const auto& [day, at] = curve.trend.back();
    table.rows.push_back({date_words(day), length_words(at.circumference_cm), say("foreseen"),
                          length_range_words(at.low_cm, at.high_cm)});
  }
  return table;
}

LimbMeasures measures_of(const Room& room, double key) {
  LimbMeasures measures;
  measures.width = room.width;
  measures.height = room.height;
  measures.line_height = room.line_height;
  measures.left = room.text_width(fmt::format("00.0 {}", length_unit_words())) + 12 * room.unit;
  measures.right = 16 * room.unit;
  measures.top = key + 6 * room.unit;
  measures.bottom = room.line_height + 10 * room.unit;
  measures.tick_label_width = room.text_width("Mmm 0000");
  return measures;
}

Picture nothing(const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.height = 3 * room.line_height;
  picture.title = say("Circumference over time");
  picture.words = say("Nothing is measured yet. Record a measurement with Ctrl+U.");
  picture.table.headings = {say("Day"), say("Circumference")};
  const double inset = 12 * room.unit;
  add_words(picture, {{inset, inset},
                      picture.words,
                      Across::left,
                      Down::top,
                      Ink::text,
                      false,
                      room.width - 2 * inset});
  return picture;
}

Picture draw(const LimbCurve& curve, const std::string& reference, const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.title = say("Circumference of the limb of {}: {}", reference, curve.name);
  picture.words = fmt::format("{}\n{}", curve.words, care_caution());
  picture.table = table_of(curve);
  const auto key = limb_key(room);
  const auto drawing = draw_limb(curve, measures_of(room, key_height(room, key)));
  picture.height = drawing.bottom + room.line_height + 10 * room.unit;
  add_sizes(picture, drawing);
  add_axes(picture, room, drawing);
  add_trend(picture, drawing);
  add_size_labels(picture, room, drawing);
  const double reach = 8 * room.unit;
  for (std::size_t i = 0; i < drawing.dots.size(); ++i) {
    const auto& [x, y] = drawing.dots[i];
    add_dot(picture, room, {x, y}, curve.dots[i].interpolated);
    picture.stops.push_back({iso_text(curve.dots[i].day),
                             curve.dot_words[i],
                             {x - reach, y - reach, x + reach, y + reach}});
  }
  add_key(picture, room, key, 0);
  return picture;
}

}  // namespace

picture::Maker limb_picture(std::optional<LimbCurve> curve, std::string reference) {
  return [curve = std::move(curve), reference = std::move(reference)](const picture::Room& room) {
    return curve ? draw(*curve, reference, room) : nothing(room);
  };
}

}  // namespace sparewell::desk
