/// Lays lists out on pages as plain data: where which text stands. Whoever paints them only copies.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "desk/printing/printable.hpp"

namespace sparewell::desk {

enum class PrintFont { text, strong, title };

/// Sizes in any one unit, which the layout then uses as well.
struct PaperSize {
  double width = 0;  ///< within the margins
  double height = 0;
  double line = 0;  ///< height of a line of text
  double gap = 0;   ///< between columns
  std::function<double(const std::string&, PrintFont)> text_width;
};

struct PlacedText {
  double x = 0;  ///< left edge, or right edge of texts that are aligned right
  double y = 0;  ///< top
  std::string text;
  PrintFont font = PrintFont::text;
  Align align = Align::left;
};

struct PlacedRule {
  double y = 0;
  double from = 0;
  double to = 0;
};

struct PrintedPage {
  std::vector<PlacedText> texts;
  std::vector<PlacedRule> rules;
};

/// Widths of a table's columns on paper. Texts stay on one line where there is room for all; else
/// wide columns are narrowed, and their texts wrapped, no narrower than their longest word; where
/// even that is too wide, all are narrowed alike and words are broken.
[[nodiscard]] std::vector<double> paper_columns(const PrintedTable& table, const PaperSize& paper);

/// Whether every table has room without breaking words.
[[nodiscard]] bool words_fit(const Printable& printable, const PaperSize& paper);

/// `text` in lines of at most `width`, broken between words where that is possible.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& text, double width,
                                               const PaperSize& paper, PrintFont font);

/// Rows are not torn apart; the headings of a table stand on each page that it reaches, and each
/// page says what it belongs to and which one it is. At least one page.
[[nodiscard]] std::vector<PrintedPage> lay_out(const Printable& printable, const PaperSize& paper);

/// Whether the lists are better printed on paper lying on its side, in units of characters.
[[nodiscard]] bool wants_landscape(const Printable& printable);

}  // namespace sparewell::desk
