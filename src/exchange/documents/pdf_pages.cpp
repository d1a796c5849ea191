#include "exchange/documents/pdf_pages.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace sparewell::exchange {
namespace {

constexpr double foot_height = 24;
constexpr double gap = 6;           // between cells
constexpr double picture_side = 2;  // of a picture, in heights of the letters beside it
constexpr double indent = 36;       // of words beside a picture

}  // namespace

void write_foot(PdfCanvas& canvas, const PageFoot& foot, int page, int pages, double x) {
  auto words = fmt::format(fmt::runtime(foot.numbers), page, pages);
  if (!foot.words.empty()) words = fmt::format("{}   {}", foot.words, words);
  canvas.write(words, {8}, x, canvas.height() - page_margin - 10, canvas.text_width());
}

PdfPages::PdfPages(PdfCanvas& canvas, PageFoot foot, int pages)
    : canvas_{canvas}, foot_{std::move(foot)}, pages_{pages} {}

double PdfPages::bottom() const {
  return canvas_.height() - page_margin - foot_height;
}

void PdfPages::end_page() {
  write_foot(canvas_, foot_, page_, pages_);
  canvas_.next_page();
}

void PdfPages::need(double height) {
  if (y_ + height <= bottom() || y_ <= page_margin) return;
  end_page();
  ++page_;
  y_ = page_margin;
}

void PdfPages::paragraph(const std::string& text, double size, bool bold, double space) {
  const Font font{size, bold};
  need(canvas_.text_height(text, font, canvas_.text_width()) + space);
  y_ += space;
  y_ += canvas_.write(text, font, page_margin, y_, canvas_.text_width());
}

double PdfPages::pictured_height(Pictogram picture, const std::string& text, Font font) const {
  const double side = picture == Pictogram::none ? 0 : picture_side * font.size;
  return std::max(canvas_.text_height(text, font, canvas_.text_width() - indent), side);
}

void PdfPages::pictured(Pictogram picture, const std::string& text, Font font, double space) {
  const double high = pictured_height(picture, text, font);
  need(high + space);
  y_ += space;
  const double side = picture == Pictogram::none ? 0 : picture_side * font.size;
  canvas_.picture(picture, page_margin, y_, side);
  const double wide = canvas_.text_width() - indent;
  // A single line stands beside the middle of its picture.
  const double lower = std::max(0.0, (side - canvas_.text_height(text, font, wide)) / 2);
  canvas_.write(text, font, page_margin + indent, y_ + lower, wide);
  y_ += high;
}

void PdfPages::row(const std::vector<std::string>& cells, const std::vector<double>& shares,
                   double size, bool bold) {
  const Font font{size, bold};
  const double all = canvas_.text_width();
  double height = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    height = std::max(height, canvas_.text_height(cells[i], font, shares[i] * all - gap));
  }
  need(height + 2 * gap);
  double x = page_margin;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    canvas_.write(cells[i], font, x, y_ + gap / 2, shares[i] * all - gap);
    x += shares[i] * all;
  }
  y_ += height + gap;
  canvas_.rule(page_margin, page_margin + all, y_);
}

void PdfPages::signature(const std::vector<std::string>& names) {
  const double wide = canvas_.text_width() / static_cast<double>(names.size());
  need(70);
  y_ += 44;
  double x = page_margin;
  for (const auto& name : names) {
    canvas_.rule(x, x + wide - 20, y_);
    canvas_.write(name, {8}, x, y_ + 3, wide - 20);
    x += wide;
  }
  y_ += 20;
}

void PdfPages::rule(double space) {
  need(2 * space);
  y_ += space;
  canvas_.rule(page_margin, page_margin + canvas_.text_width(), y_);
}

int PdfPages::finish() {
  end_page();
  return page_;
}

}  // namespace sparewell::exchange
