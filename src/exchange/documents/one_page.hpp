/// A paper that must hold on one page: its letters shrink as far as they may, then what matters
/// least is left out and counted.
#pragma once

#include <string>
#include <vector>

#include "exchange/documents/pdf_pages.hpp"

namespace sparewell::exchange {

/// What stays white around it, in points: less than where text flows.
inline constexpr double one_page_edge = 38;

/// Sizes of letters, in points.
struct LetterSize {
  double most = 11;
  double least = 9;  ///< to which they may shrink
};

struct PageLine {
  std::string words;
  Pictogram picture = Pictogram::none;
  bool bold = false;
  /// 0 is never left out; of the others the highest rank goes first, of it the last line of the
  /// section that has the most.
  int rank = 0;
};

struct PageSection {
  PageLine heading;  ///< without words there is none
  std::vector<PageLine> lines;
  LetterSize letters;
  bool framed = false;
  double share = 1;      ///< of the width, set against that of the others in its row
  std::string left_out;  ///< such as "And {} more.": said where lines of it are left out
};

struct OnePage {
  /// From above downwards; the sections of a row stand side by side.
  std::vector<std::vector<PageSection>> rows;
  /// The heading of ruled lines that fill what is left; "" leaves it white.
  std::string notes;
  double notes_height = 0;            ///< points that are kept for them at least
  std::vector<std::string> cautions;  ///< at the lower end, small
  bool foot = false;                  ///< leaves room for write_foot
};

/// Draws it and returns how many lines were left out. A line that
/// would take more than a few lines of the page where there is no room ends in an ellipsis.
int draw_one_page(PdfCanvas& canvas, OnePage page);

}  // namespace sparewell::exchange
