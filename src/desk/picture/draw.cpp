#include "desk/picture/draw.hpp"

#include <algorithm>

#include "desk/flow.hpp"
#include "desk/printing/page_layout.hpp"

namespace sparewell::picture {
namespace {

constexpr double inset = 4;
constexpr double after_sign = 6;
constexpr double after_word = 18;
constexpr double line_gap = 6;

std::vector<desk::FlowPlace> places_of(const Room& room, const std::vector<KeySign>& signs) {
  std::vector<double> widths;
  for (const auto& sign : signs) {
    widths.push_back(room.unit * (key_sign_width + after_sign + after_word) +
                     room.text_width(sign.words));
  }
  return desk::flow(widths, room.width - 2 * inset * room.unit);
}

double line_of(const Room& room) {
  return room.line_height + line_gap * room.unit;
}

}  // namespace

std::vector<std::string> lines_in(const Room& room, const std::string& text, double width,
                                  bool strong) {
  if (text.empty()) return {};
  desk::PaperSize paper;
  paper.text_width = [&](const std::string& piece, desk::PrintFont font) {
    return room.text_width(piece) *
           (font == desk::PrintFont::strong ? strong_spread : plain_spread);
  };
  const double least = 4 * room.line_height;
  return desk::wrapped(text, std::max(least, width), paper,
                       strong ? desk::PrintFont::strong : desk::PrintFont::text);
}

void add_line(Picture& picture, Spot from, Spot to, Ink ink, double width, Line line) {
  picture.marks.emplace_back(Stroke{{from, to}, ink, line, width});
}

void add_words(Picture& picture, Words words) {
  picture.marks.emplace_back(std::move(words));
}

double add_key(Picture& picture, const Room& room, const std::vector<KeySign>& signs, double top) {
  const auto places = places_of(room, signs);
  for (std::size_t i = 0; i < signs.size(); ++i) {
    const double left = room.unit * inset + places[i].x;
    const double above = top + places[i].line * line_of(room);
    const double right = left + room.unit * key_sign_width;
    signs[i].draw(picture, {left, above, right, above + line_of(room)});
    add_words(picture, {{right + room.unit * after_sign, above + line_of(room) / 2},
                        signs[i].words,
                        Across::left,
                        Down::middle,
                        Ink::text,
                        false,
                        room.width - right - room.unit * (after_sign + inset)});
  }
  return top + key_height(room, signs);
}

double key_height(const Room& room, const std::vector<KeySign>& signs) {
  const auto places = places_of(room, signs);
  return places.empty() ? 0 : (places.back().line + 1) * line_of(room);
}

}  // namespace sparewell::picture
