/// The table of resources/care-notes: how parts of a kind and material are cared for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/item.hpp"
#include "exchange/documents/pictograms.hpp"

namespace sparewell::desk {

struct CareNote {
  Kind kind = Kind::liner;
  std::optional<Material> material;  ///< empty: of every material
  std::string key;                   ///< of its text in resources/languages: "note.liner_wash"
  exchange::Pictogram picture = exchange::Pictogram::none;
  std::string source;
};

/// All rows. Throws std::logic_error when a row of the table cannot be used.
[[nodiscard]] const std::vector<CareNote>& care_notes();

/// Those for the kind and material of an item, in the order of the table.
[[nodiscard]] std::vector<const CareNote*> care_notes_of(const Item& item);

}  // namespace sparewell::desk
