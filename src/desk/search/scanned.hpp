/// Where the label of a part leads that was scanned, or typed as a scanner sends it.
#pragma once

#include <string_view>

#include "clinic/refusal.hpp"
#include "desk/search/search_index.hpp"

namespace sparewell::desk {

/// Whether the text is a barcode rather than words: it begins with a symbology identifier such as
/// ]C1, an application identifier in parentheses or the + of HIBC, holds the separator of GS1, or
/// is a number of 12 to 14 digits, or a GS1 element string that begins with an item number.
[[nodiscard]] bool looks_scanned(std::string_view typed);

/// The part in use or ended that bears the serial number, otherwise the lot on the shelf, otherwise
/// the item on the shelf. Refuses with one sentence that says what was read when nothing here
/// answers to it, or when the label may have been misread.
[[nodiscard]] Expected<Hit> where_label_leads(const Day& day, std::string_view scan);

}  // namespace sparewell::desk
