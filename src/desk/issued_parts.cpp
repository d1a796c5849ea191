#include "desk/issued_parts.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

bool alike(const Unit& a, const Unit& b) {
  return a.patient == b.patient && a.side == b.side && a.item == b.item && a.lot == b.lot &&
         a.serial == b.serial && a.issued_on == b.issued_on;
}

/// A sheet of some of the units alike is none of all of them: an unsigned one keeps it open.
void note_sheet(IssuedParts& parts, const Handover* handover) {
  const bool first = parts.units.size() == 1;
  const auto printed = handover ? handover->printed_on : std::nullopt;
  const auto signature = handover ? handover->signed_on : std::nullopt;
  parts.printed_on = std::max(parts.printed_on, printed);
  parts.signed_on = first || !signature ? signature : std::min(parts.signed_on, signature);
  parts.handed_over_here = parts.handed_over_here || handover != nullptr;
}

}  // namespace

std::vector<IssuedParts> with_sheets(const store::Snapshot& snapshot,
                                     const std::vector<Unit>& units) {
  std::vector<Handover> handovers;
  for (auto& row : snapshot.all<Handover>()) {
    if (!units.empty() && row.record.patient == units.front().patient) {
      handovers.push_back(std::move(row.record));
    }
  }
  std::vector<IssuedParts> made;
  for (const Unit& unit : units) {
    auto same = std::ranges::find_if(
        made, [&](const IssuedParts& parts) { return alike(parts.units.front(), unit); });
    if (same == made.end()) same = made.insert(made.end(), IssuedParts{});
    same->units.push_back(unit);
    const auto handover =
        std::ranges::find_if(handovers, [&](const Handover& each) { return each.is_of(unit); });
    note_sheet(*same, handover == handovers.end() ? nullptr : &*handover);
  }
  return made;
}

std::vector<IssuedParts> issued_parts(const store::Snapshot& snapshot, const UnitChoice& choice) {
  std::vector<Unit> units;
  for (auto& row : snapshot.all<Unit>()) {
    const Unit& unit = row.record;
    if (choice.answers(unit) && unit.ended_on != unit.issued_on) units.push_back(unit);
  }
  std::ranges::stable_sort(units, std::ranges::greater{}, &Unit::issued_on);
  return with_sheets(snapshot, units);
}

std::vector<IssuedParts> unsigned_parts(const store::Snapshot& snapshot, const UnitChoice& choice) {
  auto made = issued_parts(snapshot, choice);
  std::erase_if(made, [&](const IssuedParts& parts) {
    return parts.signed_on || (!parts.handed_over_here && choice.item.empty());
  });
  return made;
}

Expected<std::vector<IssuedParts>> chosen_parts(const std::vector<IssuedParts>& parts,
                                                const std::vector<int>& numbers,
                                                const std::string& patient) {
  if (parts.empty()) {
    return refuse(
        say("Nothing that was handed to {} answers to that; check patient, item, "
            "lot, serial number and day.",
            patient));
  }
  if (numbers.empty()) return parts;
  std::vector<IssuedParts> made;
  for (const int number : numbers) {
    if (number < 1 || number > std::ssize(parts)) {
      return refuse(
          say_n("There is no part number {}: {} answers to that; list them to see their numbers.",
                "There is no part number {}: {} answer to that; list them to see their numbers.",
                parts.size(), number, number_words(std::ssize(parts))));
    }
    made.push_back(parts[static_cast<std::size_t>(number - 1)]);
  }
  return made;
}

std::string issued_words(const IssuedParts& parts) {
  const Unit& unit = parts.units.front();
  auto words = say("{} {} ({}), issued {}", shown_word(unit.side), unit.item.text, lot_words(unit),
                   date_words(unit.issued_on));
  if (parts.units.size() > 1) words += say(", {} pieces", parts.units.size());
  if (parts.printed_on) words += say(", sheet written {}", date_words(*parts.printed_on));
  if (parts.signed_on) words += say(", signed {}", date_words(*parts.signed_on));
  return words;
}

}  // namespace sparewell::desk
