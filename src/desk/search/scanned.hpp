/// Where the label of a part leads that was scanned, or typed as a scanner sends it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "clinic/refusal.hpp"
#include "desk/search/search_index.hpp"

namespace sparewell::desk {

/// What here answers to a label.
struct LabelHits {
  std::vector<Hit> hits;  ///< at least one
  /// What a person has to look at before following a hit: the label may have been misread, or what
  /// it names is not here and the hit is only the nearest to it. "" when there is no doubt.
  std::string doubt;
};

/// Whether the text is a barcode rather than words: it begins with a symbology identifier such as
/// ]C1, an application identifier in parentheses or the + of HIBC, holds the separator of GS1, or
/// is a number of 12 to 14 digits, or a GS1 element string that begins with an item number.
[[nodiscard]] bool looks_scanned(std::string_view typed);

/// The parts that bear the serial number, in use before ended; otherwise the lot on the shelf;
/// otherwise the parts of that lot; otherwise the item. Refuses with one sentence that says what
/// was read when nothing here answers to it, or what cannot be read.
[[nodiscard]] Expected<LabelHits> where_label_leads(const Day& day, std::string_view scan);

}  // namespace sparewell::desk
