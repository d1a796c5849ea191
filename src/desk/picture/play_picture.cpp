#include "desk/picture/play_picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "clinic/say.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/plot_marks.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

struct Style {
  double width;
  Line line;
  SignForm form;
  Ink ink;
};
constexpr std::array<Style, 4> styles{{{2, Line::solid, SignForm::disc, Ink::ahead},
                                       {2, Line::dashed, SignForm::diamond, Ink::ahead},
                                       {1, Line::solid, SignForm::square, Ink::text},
                                       {1, Line::dotted, SignForm::triangle, Ink::text}}};

const Style& style_of(std::size_t curve) {
  return styles.at(std::min(curve, styles.size() - 1));
}

void add_sign(Picture& picture, const Room& room, std::size_t curve, Spot at) {
  const auto& style = style_of(curve);
  const double size = style.form == SignForm::diamond ? 6 : 4.5;
  picture.marks.emplace_back(Sign{at, style.form, size * room.unit, style.ink, true});
}

void add_curve_line(Picture& picture, std::size_t curve, std::vector<Spot> through) {
  const auto& style = style_of(curve);
  picture.marks.emplace_back(Stroke{std::move(through), style.ink, style.line, style.width});
}

void add_axes(Picture& picture, const Room& room, const PlayDrawing& drawing,
              const std::string& money_title) {
  const auto& [left, right] = drawing.across;
  add_words(picture, {{4 * room.unit, 2 * room.unit},
                      say("Pieces on hand when asked for"),
                      Across::left,
                      Down::top,
                      Ink::text,
                      true,
                      0});
  add_words(picture, {{right, drawing.bottom + 6 * room.unit + room.line_height},
                      money_title,
                      Across::right,
                      Down::top,
                      Ink::text,
                      true,
                      0});
  add_grid(picture, room, {left, drawing.top, right, drawing.bottom}, drawing.stock_ticks,
           drawing.fill_rate_ticks);
}

void add_label(Picture& picture, const Room& room, const PlayDrawing& drawing, const PlayMark& mark,
               const std::string& label) {
  const double unit = 4 * room.unit;
  picture.marks.emplace_back(Sign{{mark.x, mark.y}, SignForm::ring, 2 * unit, Ink::text, false});
  const double width = 1.1 * room.text_width(label);
  // Left above the curve, where little lies, as long as there is room.
  const double beside = mark.x - width - 3 * unit;
  const double left = beside > drawing.across.left ? beside : mark.x + 3 * unit;
  const double top = std::max(0.0, mark.y - room.line_height - 2 * unit);
  picture.marks.emplace_back(Box{{left - unit, top, left + width + unit, top + room.line_height},
                                 Ink::paper,
                                 Fill::solid,
                                 Line::none,
                                 1,
                                 0});
  add_words(picture, {{left, top}, label, Across::left, Down::top, Ink::text, true, 0});
}

void add_points(Picture& picture, const Room& room, const PlayDrawing& drawing,
                const std::vector<PlayCurve>& curves) {
  const double reach = 9 * room.unit;
  for (std::size_t c = 0; c < curves.size(); ++c) {
    std::vector<Spot> through;
    for (const auto& mark : drawing.marks) {
      if (mark.curve == c) through.push_back({mark.x, mark.y});
    }
    if (through.size() > 1) add_curve_line(picture, c, std::move(through));
  }
  for (const auto& mark : drawing.marks) {
    const auto& point = curves[mark.curve].points[mark.point];
    add_sign(picture, room, mark.curve, {mark.x, mark.y});
    if (!point.label.empty()) add_label(picture, room, drawing, mark, point.label);
    picture.stops.push_back(
        {point.id, point.words, {mark.x - reach, mark.y - reach, mark.x + reach, mark.y + reach}});
  }
}

/// Curves rise to the right, so that the lower right is free.
void add_curve_key(Picture& picture, const Room& room, const PlayDrawing& drawing,
                   const std::vector<PlayCurve>& curves) {
  double widest = 0;
  for (const auto& curve : curves) widest = std::max(widest, room.text_width(curve.name));
  const double line = room.line_height + 4 * room.unit;
  const double sign = 36 * room.unit;
  const double left = drawing.across.right - widest - sign - 16 * room.unit;
  double top = drawing.bottom - line * static_cast<double>(curves.size()) - 8 * room.unit;
  const Area area{left - 6 * room.unit, top - 3 * room.unit, drawing.across.right - 6 * room.unit,
                  drawing.bottom - 5 * room.unit};
  picture.marks.emplace_back(Box{area, Ink::paper, Fill::solid, Line::none, 1, 0});
  picture.marks.emplace_back(Box{area, Ink::faint, Fill::none, Line::solid, 1, 0});
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const double middle = top + line / 2;
    const double end = left + sign - 6 * room.unit;
    if (curves[i].points.size() > 1) add_curve_line(picture, i, {{left, middle}, {end, middle}});
    add_sign(picture, room, i, {(left + end) / 2, middle});
    add_words(
        picture,
        {{left + sign, middle}, curves[i].name, Across::left, Down::middle, Ink::text, false, 0});
    top += line;
  }
}

FigureTable table_of(const std::vector<PlayCurve>& curves, const std::string& money_title) {
  FigureTable table;
  table.headings = {say("Way of ordering"), money_title, say("Pieces on hand when asked for"),
                    say("Remark")};
  for (const auto& curve : curves) {
    for (const auto& point : curve.points) {
      table.rows.push_back({curve.name, number_words(std::llround(point.stock)),
                            say("{:.1f} %", 100 * point.fill_rate), point.label});
    }
  }
  return table;
}

/// Where each curve begins and ends, and the points that are set apart in their own words.
std::string words_of(const std::vector<PlayCurve>& curves, const std::string& money_title) {
  std::string text =
      say("{} across, the share of pieces on hand when asked for upwards.", money_title);
  for (const auto& curve : curves) {
    if (curve.points.empty()) continue;
    const auto& first = curve.points.front();
    const auto& last = curve.points.back();
    text += '\n';
    text += curve.points.size() == 1
                ? say("{}: {} with {:.1f} % on hand.", curve.name,
                      number_words(std::llround(first.stock)), 100 * first.fill_rate)
                : say("{}: from {} with {:.1f} % on hand to {} with {:.1f} %.", curve.name,
                      number_words(std::llround(first.stock)), 100 * first.fill_rate,
                      number_words(std::llround(last.stock)), 100 * last.fill_rate);
    for (const auto& point : curve.points) {
      if (!point.label.empty())
        text += fmt::format(" {}: {}", capitalised(point.label), point.words);
    }
  }
  return text;
}

Picture draw(const std::vector<PlayCurve>& curves, const std::string& money_title,
             const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.title = say("Money in stock against pieces on hand");
  picture.words = words_of(curves, money_title);
  picture.table = table_of(curves, money_title);
  if (curves.empty()) return picture;
  PlayMeasures measures;
  measures.width = room.width;
  measures.height = room.height;
  measures.line_height = room.line_height;
  measures.left = room.text_width("100 %") + 12 * room.unit;
  measures.right = 16 * room.unit;
  measures.top = 1.5 * room.line_height + 6 * room.unit;
  measures.bottom = 2 * room.line_height + 10 * room.unit;
  measures.tick_label_width = room.text_width("000,000");
  const auto drawing = draw_play(curves, measures);
  picture.height = drawing.bottom + measures.bottom;
  add_axes(picture, room, drawing, money_title);
  add_points(picture, room, drawing, curves);
  add_curve_key(picture, room, drawing, curves);
  return picture;
}

}  // namespace

picture::Maker play_picture(std::vector<PlayCurve> curves, std::string money_title) {
  return [curves = std::move(curves), money_title = std::move(money_title)](
             const picture::Room& room) { return draw(curves, money_title, room); };
}

}  // namespace sparewell::desk
