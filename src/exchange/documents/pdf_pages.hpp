/// Text that flows down the pages of a PDF file.
#pragma once

#include <string>
#include <vector>

#include "clinic/say.hpp"
#include "exchange/documents/pdf_canvas.hpp"

namespace sparewell::exchange {

/// What stands below every page.
struct PageFoot {
  std::string words;                            ///< such as the patient's reference; "" for none
  std::string numbers = said("Page {} of {}");  ///< in the paper's language
};

/// All lengths are points, 1/72 inch.
class PdfPages {
 public:
  /// `pages` is how many there will be in the file.
  PdfPages(PdfCanvas& canvas, PageFoot foot, int pages);

  /// A paragraph over the whole width, with `space` above it. Its lines are kept together where a
  /// page can hold them.
  void paragraph(const std::string& text, double size, bool bold = false, double space = 6);
  /// A paragraph beside a picture, or beside the room for one.
  void pictured(Pictogram picture, const std::string& text, Font font, double space = 6);
  /// How high that would be.
  [[nodiscard]] double pictured_height(Pictogram picture, const std::string& text, Font font) const;
  /// Cells side by side, each wrapped in its share of the width, with a line below.
  void row(const std::vector<std::string>& cells, const std::vector<double>& shares, double size,
           bool bold);
  /// A line to write on, named below.
  void signature(const std::vector<std::string>& names);
  /// A line over the whole width, with `space` above it.
  void rule(double space = 4);
  /// Goes to the next page unless so much height is left.
  void need(double height);
  [[nodiscard]] int page() const { return page_; }
  /// Ends the last page and returns its number.
  int finish();

 private:
  void end_page();
  [[nodiscard]] double bottom() const;

  PdfCanvas& canvas_;
  PageFoot foot_;
  int pages_ = 1;
  int page_ = 1;
  double y_ = page_margin;
};

/// Writes the foot of a page from `x` on: words, and which of how many pages it is.
void write_foot(PdfCanvas& canvas, const PageFoot& foot, int page, int pages,
                double x = page_margin);

}  // namespace sparewell::exchange
