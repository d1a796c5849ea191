#include "desk/picture/sheets.hpp"

#include <algorithm>
#include <sstream>

namespace sparewell::picture {
namespace {

Piece title_of(const Picture& picture, const Room& room) {
  Picture title;
  title.width = picture.width;
  title.height = 1.5 * room.line_height;
  Words words;
  words.text = picture.title;
  words.strong = true;
  words.most_width = picture.width;
  title.marks.emplace_back(words);
  return {title, 0, title.height, 0};
}

/// The last height up to `most` at which no stop is cut; `most` where every height cuts one.
double parted_at(const Picture& picture, double from, double most) {
  if (picture.height <= most) return picture.height;
  double best = from;
  for (const auto& stop : picture.stops) {
    const double end = stop.area.bottom;
    if (end <= best || end > most) continue;
    const bool cuts = std::ranges::any_of(picture.stops, [&](const Stop& other) {
      return other.area.top < end - 0.5 && other.area.bottom > end + 0.5;
    });
    if (!cuts) best = end;
  }
  return best > from ? best : most;
}

class Sheets {
 public:
  Sheets(const Picture& picture, const Room& room, double height)
      : title_{title_of(picture, room)}, height_{height} {
    begin();
  }

  void begin() {
    sheets_.push_back({title_});
    at_ = title_.to;
  }
  void add(Piece piece) {
    piece.at = at_;
    at_ += piece.to - piece.from;
    sheets_.back().push_back(std::move(piece));
  }
  [[nodiscard]] double left() const { return height_ - at_; }
  [[nodiscard]] std::vector<Sheet> take() { return std::move(sheets_); }

 private:
  Piece title_;
  double height_;
  double at_ = 0;
  std::vector<Sheet> sheets_;
};

}  // namespace

std::vector<std::string> wrapped(const std::string& text, const Room& room, double width) {
  std::vector<std::string> lines;
  std::istringstream paragraphs{text};
  for (std::string paragraph; std::getline(paragraphs, paragraph);) {
    std::istringstream words{paragraph};
    std::string line;
    for (std::string word; words >> word;) {
      auto longer = line;
      if (!line.empty()) longer += ' ';
      longer += word;
      if (!line.empty() && room.text_width(longer) > width) {
        lines.push_back(std::move(line));
        longer = word;
      }
      line = std::move(longer);
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<Sheet> sheets_of(const Picture& picture, const Room& room, double height) {
  Sheets sheets{picture, room, height};
  sheets.add({picture, 0, picture.fixed_top, 0});
  for (double from = picture.fixed_top; from < picture.height;) {
    // At least a line, however low the sheet is.
    const double room_left = std::max(sheets.left(), room.line_height);
    const double to = parted_at(picture, from, from + room_left);
    sheets.add({picture, from, to, 0});
    from = to;
    if (from >= picture.height) break;
    sheets.begin();
    sheets.add({picture, 0, picture.fixed_top, 0});
  }
  // Letters come out a little wider on some sheets than they were measured.
  for (const auto& line : wrapped(picture.words, room, 0.95 * picture.width)) {
    if (sheets.left() < 2 * room.line_height) sheets.begin();
    Picture words;
    words.width = picture.width;
    words.height = 1.3 * room.line_height;
    words.marks.emplace_back(
        Words{{0, 0.3 * room.line_height}, line, Across::left, Down::top, Ink::text, false, 0});
    sheets.add({words, 0, words.height, 0});
  }
  return sheets.take();
}

}  // namespace sparewell::picture
