/// Text that flows down the pages of a PDF file, by cairo and pango.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "exchange/documents/delivery_sheet.hpp"

namespace sparewell::exchange {

/// All lengths are points, 1/72 inch.
class PdfPages {
 public:
  /// Every page says "Page i of `pages`" below, beside `foot`.
  PdfPages(const std::string& path, PaperSize paper, std::string foot, int pages);
  ~PdfPages();
  PdfPages(const PdfPages&) = delete;
  PdfPages& operator=(const PdfPages&) = delete;

  /// A paragraph over the whole width, with `space` above it. Its lines are kept together where a
  /// page can hold them.
  void paragraph(const std::string& text, double size, bool bold = false, double space = 6);
  /// Cells side by side, each wrapped in its share of the width, with a line below.
  void row(const std::vector<std::string>& cells, const std::vector<double>& shares, double size,
           bool bold);
  /// A line to write on, named below.
  void signature(const std::vector<std::string>& names);
  /// Goes to the next page unless so much height is left.
  void need(double height);
  [[nodiscard]] int page() const;
  /// Ends the file; false when it could not be written.
  [[nodiscard]] bool finish();

 private:
  struct Drawing;
  std::unique_ptr<Drawing> drawing_;
};

}  // namespace sparewell::exchange
