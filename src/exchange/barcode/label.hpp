/// What the barcodes on one package say.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"

namespace sparewell::exchange {

/// One field of a barcode as it was read: "17" and "261231" in GS1, "16D" and "20111212" in HIBC.
struct Element {
  std::string identifier;
  std::string value;

  friend bool operator==(const Element&, const Element&) = default;
};

/// A field is empty when the label does not say it; that says nothing about the part.
struct Label {
  std::string gtin;     ///< 14 digits; shorter numbers have zeros in front. "" on HIBC labels
  std::string maker;    ///< HIBC: labeler identification code, four characters
  std::string product;  ///< HIBC: the maker's product or catalogue number
  std::optional<int> package_level;  ///< HIBC unit of measure, 0 to 9; 0 is the single piece
  std::string lot;
  std::string serial;
  std::optional<Date> use_by;
  std::optional<Date> made_on;
  std::optional<int> quantity;    ///< pieces
  std::string doubt;              ///< one sentence when the label may have been misread; else ""
  std::vector<Element> elements;  ///< everything as read, also what has no field above

  /// False when only a second barcode was read, which does not say what the part is.
  [[nodiscard]] bool names_item() const { return !gtin.empty() || !product.empty(); }
  friend bool operator==(const Label&, const Label&) = default;
};

}  // namespace sparewell::exchange
