#include "desk/help_pictures/diagram.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/picture/draw.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

constexpr double box_pad = 7;
constexpr double box_sign = 5;

/// How far the title stands right of the pad.
double title_indent(const Room& room, const WordBox& box) {
  return box.sign ? (2 * box_sign + 5) * room.unit : 0;
}

double inner_width(const Room& room, double width) {
  return width - 2 * box_pad * room.unit;
}

std::vector<std::string> title_lines(const Room& room, const WordBox& box, double width) {
  return lines_in(room, box.title, inner_width(room, width) - title_indent(room, box), true);
}

/// Where the text begins beside the title; empty where it stands below it.
std::optional<double> text_beside(const Room& room, const WordBox& box, double width) {
  if (!box.beside) return std::nullopt;
  const double left = title_indent(room, box) + strong_spread * room.text_width(box.title) +
                      2 * box_pad * room.unit;
  const double end = left + plain_spread * room.text_width(box.text);
  return end <= inner_width(room, width) ? std::optional{left} : std::nullopt;
}

struct Moved {
  double down;

  void operator()(Stroke& stroke) const {
    for (auto& spot : stroke.through) spot.y += down;
  }
  void operator()(Box& box) const { move(box.area); }
  void operator()(Shape& shape) const {
    for (auto& spot : shape.outline) spot.y += down;
  }
  void operator()(Sign& sign) const { sign.at.y += down; }
  void operator()(Words& words) const { words.at.y += down; }
  void move(Area& area) const {
    area.top += down;
    area.bottom += down;
  }
};

}  // namespace

std::string as_sentence(std::string words) {
  if (!words.empty() && std::string_view{".?!"}.find(words.back()) == std::string_view::npos) {
    words += '.';
  }
  return words;
}

std::string box_words(const WordBox& box) {
  if (box.title.empty()) return as_sentence(box.text);
  return as_sentence(box.text.empty() ? box.title : fmt::format("{}: {}", box.title, box.text));
}

double add_text(Picture& picture, const Room& room, const std::string& text, Spot at, double width,
                bool strong, Ink ink) {
  for (auto& line : lines_in(room, text, width, strong)) {
    add_words(picture, {at, std::move(line), Across::left, Down::top, ink, strong, 0});
    at.y += room.line_height;
  }
  return at.y;
}

double box_height(const Room& room, const WordBox& box, double width) {
  if (text_beside(room, box, width)) return room.line_height + 2 * box_pad * room.unit;
  const auto lines = title_lines(room, box, width).size() +
                     lines_in(room, box.text, inner_width(room, width)).size();
  return static_cast<double>(lines) * room.line_height + 2 * box_pad * room.unit;
}

void add_word_box(Picture& picture, const Room& room, const Area& area, const WordBox& box,
                  const std::string& id) {
  const double width = area.right - area.left;
  const double pad = box_pad * room.unit;
  picture.marks.emplace_back(Box{area, box.needs_look ? Ink::alarm : Ink::past, Fill::none,
                                 box.needs_look ? Line::dashed : Line::solid,
                                 box.needs_look ? 2.0 : 1.0, 4 * room.unit});
  if (box.sign) {
    const double size = box_sign * room.unit;
    picture.marks.emplace_back(Sign{{area.left + pad + size, area.top + pad + room.line_height / 2},
                                    *box.sign,
                                    size,
                                    box.needs_look ? Ink::alarm : Ink::text,
                                    true});
  }
  const double indent = title_indent(room, box);
  const Spot at{area.left + pad, area.top + pad};
  const double below =
      add_text(picture, room, box.title, {at.x + indent, at.y}, inner_width(room, width) - indent,
               true, box.needs_look ? Ink::alarm : Ink::text);
  if (const auto left = text_beside(room, box, width)) {
    add_text(picture, room, box.text, {at.x + *left, at.y}, inner_width(room, width) - *left);
  } else {
    add_text(picture, room, box.text, {at.x, below}, inner_width(room, width));
  }
  picture.stops.push_back({id, box_words(box), area});
}

void add_arrow(Picture& picture, const Room& room, std::vector<Spot> through, Line line) {
  if (through.size() < 2) return;
  const Spot from = through[through.size() - 2];
  const Spot tip = through.back();
  const double length = std::max(1.0, std::hypot(tip.x - from.x, tip.y - from.y));
  const double size = 8 * room.unit;
  const Spot along{(tip.x - from.x) / length * size, (tip.y - from.y) / length * size};
  const Spot foot{tip.x - along.x, tip.y - along.y};
  through.back() = foot;
  picture.marks.emplace_back(Stroke{std::move(through), Ink::text, line, 1.5});
  picture.marks.emplace_back(Shape{{tip,
                                    {foot.x - 0.5 * along.y, foot.y + 0.5 * along.x},
                                    {foot.x + 0.5 * along.y, foot.y - 0.5 * along.x}},
                                   Ink::text,
                                   Fill::solid,
                                   Line::none});
}

void add_lone_sign(Picture& picture, const Room& room, Spot at, SignForm form, Ink ink) {
  const double size = 7 * room.unit;
  const double ground = size + 5 * room.unit;
  picture.marks.emplace_back(Box{{at.x - ground, at.y - ground, at.x + ground, at.y + ground},
                                 Ink::paper,
                                 Fill::solid,
                                 Line::none,
                                 1,
                                 ground});
  picture.marks.emplace_back(Sign{at, form, size, ink, true});
}

Maker as_example(Maker inner, std::string title, std::string heading) {
  return [inner = std::move(inner), title = std::move(title),
          heading = std::move(heading)](const Room& room) {
    const double edge = diagram_edge * room.unit;
    Picture top;
    const double down =
        add_text(top, room, heading, {edge, 0.75 * edge}, room.width - 2 * edge, true) + edge / 2;
    Room left = room;
    left.height = std::max(0.0, room.height - down);
    auto picture = inner(left);
    const Moved moved{down};
    for (auto& mark : picture.marks) std::visit(moved, mark);
    for (auto& stop : picture.stops) moved.move(stop.area);
    picture.marks.insert(picture.marks.begin(), top.marks.begin(), top.marks.end());
    picture.height += down;
    if (picture.fixed_top > 0) picture.fixed_top += down;
    picture.title = title;
    picture.words = fmt::format("{} {}\n{}", as_sentence(heading),
                                said("All names and figures in it are invented."), picture.words);
    return picture;
  };
}

}  // namespace sparewell::desk
