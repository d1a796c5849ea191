#include "exchange/documents/one_page.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace sparewell::exchange {
namespace {

constexpr double edge = one_page_edge;
constexpr double caution_size = 8.5;
constexpr double foot_height = 20;
constexpr double column_gap = 16;
constexpr double padding = 7;         // within a frame
constexpr double picture_side = 1.5;  // in heights of letters
constexpr double heading_ratio = 1.1;
constexpr double ruled_gap = 22;
constexpr int few_lines = 4;

/// How far letters have shrunk, and whether long texts are cut.
struct Setting {
  double scale = 1;    ///< 0 at their least size, 1 at their most
  int most_lines = 0;  ///< of one text; 0 for all
};

double wide_of(const PdfCanvas& canvas) {
  return canvas.width() - 2 * edge;
}

double size_of(const LetterSize& letters, double scale) {
  return letters.least + scale * (letters.most - letters.least);
}

/// Measures and draws by the same way down the page.
class Layout {
 public:
  Layout(PdfCanvas& canvas, const Setting& setting, bool drawn)
      : canvas_{canvas}, setting_{setting}, drawn_{drawn} {}

  /// All of it from the upper margin on; returns where it ends.
  double rows(const OnePage& page) {
    double y = edge;
    for (const auto& row : page.rows) y = this->row(row, y) + 3 + 7 * setting_.scale;
    return y;
  }

 private:
  double row(const std::vector<PageSection>& sections, double y) {
    double shares = 0;
    for (const auto& each : sections) shares += each.share;
    const double all = wide_of(canvas_) - static_cast<double>(sections.size() - 1) * column_gap;
    double x = edge;
    double lowest = y;
    for (const auto& each : sections) {
      const double wide = all * each.share / shares;
      lowest = std::max(lowest, section(each, x, y, wide));
      x += wide + column_gap;
    }
    return lowest;
  }

  double section(const PageSection& section, double x, double y, double wide) {
    const double top = y;
    const double inner = section.framed ? padding : 0;
    y += inner;
    const double size = size_of(section.letters, setting_.scale);
    if (!section.heading.words.empty()) {
      const Font font{size * heading_ratio, true};
      y += line(section.heading, font, x + inner, y, wide - 2 * inner);
      if (!section.framed) {
        if (drawn_) canvas_.rule(x, x + wide, y + 1, 1);
        y += 3;
      }
      y += 2;
    }
    for (const auto& each : section.lines) {
      y += line(each, {size, each.bold}, x + inner, y, wide - 2 * inner);
      y += (0.15 + 0.3 * setting_.scale) * size;
    }
    y += inner;
    if (section.framed && drawn_) canvas_.frame(x, top, wide, y - top);
    return y;
  }

  double line(const PageLine& line, Font font, double x, double y, double wide) {
    const double side = line.picture == Pictogram::none ? 0 : picture_side * font.size;
    const double indent = side > 0 ? side + 7 : 0;
    const double text = canvas_.text_height(line.words, font, wide - indent, setting_.most_lines);
    const double high = std::max(text, side);
    if (!drawn_) return high;
    if (side > 0) canvas_.picture(line.picture, x, y + std::max(0.0, (text - side) / 2), side);
    canvas_.write(line.words, font, x + indent, y + (high - text) / 2, wide - indent,
                  setting_.most_lines);
    return high;
  }

  PdfCanvas& canvas_;
  Setting setting_;
  bool drawn_;
};

double cautions_height(PdfCanvas& canvas, const OnePage& page) {
  double high = 0;
  for (const auto& caution : page.cautions) {
    high += canvas.text_height(caution, {caution_size}, wide_of(canvas)) + 3;
  }
  return high;
}

/// Takes the line that matters least out; false when every line must stay.
bool leave_one_out(OnePage& page, std::vector<int>& counts) {
  int highest = 1;
  for (const auto& row : page.rows) {
    for (const auto& section : row) {
      for (const auto& line : section.lines) highest = std::max(highest, line.rank);
    }
  }
  PageSection* longest = nullptr;
  std::size_t place = 0;
  std::size_t number = 0;
  for (auto& row : page.rows) {
    for (auto& section : row) {
      const bool has = std::ranges::count(section.lines, highest, &PageLine::rank) > 0;
      if (has && (longest == nullptr || section.lines.size() >= longest->lines.size())) {
        longest = &section;
        place = number;
      }
      ++number;
    }
  }
  if (longest == nullptr) return false;
  auto& lines = longest->lines;
  const auto last = std::find_if(lines.rbegin(), lines.rend(),
                                 [&](const auto& line) { return line.rank == highest; });
  lines.erase(std::next(last).base());
  ++counts[place];
  return true;
}

/// The page with a line in each section that says how many of its lines are left out.
OnePage with_counts(OnePage page, const std::vector<int>& counts) {
  std::size_t number = 0;
  for (auto& row : page.rows) {
    for (auto& section : row) {
      const int count = counts[number++];
      if (count == 0 || section.left_out.empty()) continue;
      section.lines.push_back({fmt::format(fmt::runtime(section.left_out), count)});
    }
  }
  return page;
}

/// Finds how the page can be laid out within `room`.
class Fitting {
 public:
  Fitting(PdfCanvas& canvas, OnePage page, double room)
      : canvas_{canvas}, page_{std::move(page)}, room_{room} {
    std::size_t sections = 0;
    for (const auto& row : page_.rows) sections += row.size();
    counts_.assign(sections, 0);
    shrink_letters();
  }

  [[nodiscard]] OnePage page() const { return with_counts(page_, counts_); }
  [[nodiscard]] Setting setting() const { return setting_; }
  [[nodiscard]] double height() const { return height_at(setting_); }
  [[nodiscard]] int left_out() const {
    int all = 0;
    for (const int count : counts_) all += count;
    return all;
  }

 private:
  [[nodiscard]] double height_at(const Setting& setting) const {
    return Layout{canvas_, setting, false}.rows(page()) - edge;
  }
  [[nodiscard]] bool fits(const Setting& setting) const { return height_at(setting) <= room_; }

  void shrink_letters() {
    if (fits(setting_)) return;
    setting_.scale = 0;
    if (!fits(setting_)) return leave_out();
    double least = 0;
    double most = 1;
    for (int step = 0; step < 5; ++step) {
      const double middle = (least + most) / 2;
      (fits({middle, 0}) ? least : most) = middle;
    }
    setting_.scale = least;
  }

  void leave_out() {
    setting_.most_lines = few_lines;
    while (!fits(setting_) && leave_one_out(page_, counts_)) {
    }
  }

  PdfCanvas& canvas_;
  OnePage page_;
  double room_;
  Setting setting_;
  std::vector<int> counts_;
};

void draw_notes(PdfCanvas& canvas, const std::string& heading, double from, double to) {
  if (heading.empty()) return;
  canvas.write(heading, {10, true}, edge, from, wide_of(canvas));
  for (double y = from + 14 + ruled_gap; y <= to; y += ruled_gap) {
    canvas.rule(edge, canvas.width() - edge, y, 0.4);
  }
}

}  // namespace

int draw_one_page(PdfCanvas& canvas, OnePage page) {
  const double foot = page.foot ? page_margin - edge + foot_height : 0;
  const double bottom = canvas.height() - edge - foot - cautions_height(canvas, page);
  const double room = bottom - edge - page.notes_height;
  const Fitting fitting{canvas, std::move(page), room};
  const auto fitted = fitting.page();
  double y = bottom;
  for (const auto& caution : fitted.cautions) {
    y += canvas.write(caution, {caution_size}, edge, y, wide_of(canvas)) + 3;
  }
  const double ends = edge + std::min(fitting.height(), room);
  draw_notes(canvas, fitted.notes, ends, bottom - 8);
  // What must stay may still be too much: then the page is drawn smaller.
  if (fitting.height() > room) canvas.shrink(room / fitting.height(), edge, edge);
  (void)Layout{canvas, fitting.setting(), true}.rows(fitted);
  return fitting.left_out();
}

}  // namespace sparewell::exchange
