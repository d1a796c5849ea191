/// A PDF file to draw on: text by pango, shapes by cairo.
#pragma once

#include <memory>
#include <string>

#include "exchange/documents/paper_size.hpp"
#include "exchange/documents/pictograms.hpp"

namespace sparewell::exchange {

/// The edge of every page that stays white.
inline constexpr double page_margin = 50;

struct Font {
  double size = 10;  ///< points
  bool bold = false;
};

/// All lengths are points, 1/72 inch, from the upper left corner of the page.
class PdfCanvas {
 public:
  /// An empty path draws without a file.
  PdfCanvas(const std::string& path, PaperSize paper);
  ~PdfCanvas();
  PdfCanvas(const PdfCanvas&) = delete;
  PdfCanvas& operator=(const PdfCanvas&) = delete;

  [[nodiscard]] double width() const;
  [[nodiscard]] double height() const;
  /// Between the margins.
  [[nodiscard]] double text_width() const { return width() - 2 * page_margin; }

  /// The height of a text that is wrapped to be so wide. More than `most_lines` lines end in an
  /// ellipsis; 0 takes them all.
  [[nodiscard]] double text_height(const std::string& text, Font font, double wide,
                                   int most_lines = 0) const;
  /// Writes it and returns its height.
  double write(const std::string& text, Font font, double x, double y, double wide,
               int most_lines = 0);
  void rule(double from, double to, double y, double thick = 0.5);
  /// An empty box with round corners.
  void frame(double x, double y, double wide, double high, double thick = 1.5);
  void picture(Pictogram which, double x, double y, double side);
  /// What is drawn on this page from now on is smaller by `factor`, as seen from that point.
  void shrink(double factor, double x, double y);
  void next_page();
  /// Ends the file; false when it could not be written.
  [[nodiscard]] bool finish();

 private:
  struct Surface;
  std::unique_ptr<Surface> surface_;
};

}  // namespace sparewell::exchange
