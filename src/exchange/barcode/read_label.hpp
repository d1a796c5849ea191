/// Reads what a scanner sends, or a person types, from the label of a part.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "clinic/refusal.hpp"
#include "exchange/barcode/label.hpp"

namespace sparewell::exchange {

/// Reads all barcodes of one package, most often one, in any order: GS1 element strings as scanned
/// (with or without the symbology prefix ]C1, ]d2, ]Q3 or ]e0) or typed with parentheses, a bare
/// item number (GTIN-8, -12, -13 or -14), HIBC with one or two symbols. Line breaks and tabs that a
/// scanner adds are left out. `today` decides the century of two-digit years.
///
/// Refuses with one sentence what cannot be read beyond doubt; a Label with a `doubt` was read, but
/// a person must compare it with the package. A label may lack anything, also the item.
[[nodiscard]] Expected<Label> read_label(std::span<const std::string> scans, Date today);
[[nodiscard]] Expected<Label> read_label(std::string_view scan, Date today);

}  // namespace sparewell::exchange
