/// Reads HIBC supplier labels (ANSI/HIBC 2.x).
#pragma once

#include <string_view>

#include "clinic/refusal.hpp"
#include "exchange/barcode/label.hpp"

namespace sparewell::exchange {

/// What one HIBC symbol says, and the characters that tie two symbols together.
struct HibcSymbol {
  Label label;
  char check = ' ';  ///< its own check character
  char link = '\0';  ///< of a second symbol alone: the first one's check character
};

/// Reads a symbol that begins with '+': the item (primary), lot, dates and quantity (secondary), or
/// both joined by '/'. A blank that is the check or link character may be written '_', as on paper.
/// Refuses a wrong check character, saying which was read and which was expected.
///
/// Forms of the secondary part: YYJJJ lot; `$` lot; `$+` serial; `$$` with MMYY, 2MMDDYY, 3YYMMDD,
/// 4YYMMDDHH, 5YYJJJ, 6YYJJJHH or 7 (no date) and the lot; `$$+` the same and the serial; `$$8nn`
/// and `$$9nnnnn` a quantity before these. Further parts after '/': S serial, 14D use-by, 16D
/// manufacture, Q quantity; others are kept as elements. The hour is left out. Years of two digits
/// are read by the rule of GS1: the text of ANSI/HIBC on this was not at hand.
[[nodiscard]] Expected<HibcSymbol> read_hibc(std::string_view text, Date today);

/// Both symbols of one package. Refuses a second one whose link character is not the first one's
/// check character: they are from different packages.
[[nodiscard]] Expected<Label> join_hibc(const HibcSymbol& first, const HibcSymbol& second);

}  // namespace sparewell::exchange
