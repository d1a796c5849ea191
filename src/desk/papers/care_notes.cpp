#include "desk/papers/care_notes.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "care_note_texts.hpp"
#include "desk/embedded_table.hpp"

namespace sparewell::desk {
namespace {

using exchange::Pictogram;

std::optional<Pictogram> pictogram_named(std::string_view word) {
  static constexpr std::array<std::pair<std::string_view, Pictogram>, 8> pictures{
      {{"liner", Pictogram::liner},
       {"wash", Pictogram::wash},
       {"dry", Pictogram::dry},
       {"no_heat", Pictogram::no_heat},
       {"no_chemicals", Pictogram::no_chemicals},
       {"look", Pictogram::look},
       {"take_off", Pictogram::take_off},
       {"warning", Pictogram::warning}}};
  for (const auto& [name, picture] : pictures) {
    if (name == word) return picture;
  }
  return std::nullopt;
}

std::vector<CareNote> read_table() {
  std::vector<CareNote> made;
  const auto& embedded = care_note_texts::embedded_texts[0];
  for_each_table_row(embedded.name, embedded.text, 5, [&](std::span<const std::string> cells) {
    const auto kind = parse_word<Kind>(cells[0]);
    const auto material = parse_word<Material>(cells[1]);
    const auto picture = pictogram_named(cells[3]);
    const bool usable = kind && (material || cells[1].empty()) && picture;
    if (!usable || cells[2].empty() || cells[4].empty()) return false;
    made.push_back({*kind, material, fmt::format("note.{}", cells[2]), *picture, cells[4]});
    return true;
  });
  return made;
}

}  // namespace

const std::vector<CareNote>& care_notes() {
  static const std::vector<CareNote> table = read_table();
  return table;
}

std::vector<const CareNote*> care_notes_of(const Item& item) {
  std::vector<const CareNote*> made;
  for (const auto& note : care_notes()) {
    if (note.kind == item.kind && note.material.value_or(item.material) == item.material) {
      made.push_back(&note);
    }
  }
  return made;
}

}  // namespace sparewell::desk
