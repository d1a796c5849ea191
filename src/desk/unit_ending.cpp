#include "desk/unit_ending.hpp"

#include <algorithm>
#include <ranges>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_use.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using store::Row;

std::string unit_words(const Unit& unit) {
  return say("{} {} ({}, issued {})", shown_word(unit.side), unit.item.text, lot_words(unit),
             iso_text(unit.issued_on));
}

/// Of units alike in everything, the last copy: which of them it is makes no difference.
Expected<Row<Unit>> chosen(const store::Snapshot& snapshot, const UnitChoice& choice) {
  if (!snapshot.patient({choice.patient})) {
    return refuse(say("There is no patient '{}'; check the reference.", choice.patient));
  }
  std::vector<Row<Unit>> found;
  for (auto& row : choice.item.empty() ? snapshot.all<Unit>() : snapshot.units_of({choice.item})) {
    if (!row.record.ended_on && choice.answers(row.record)) found.push_back(std::move(row));
  }
  if (found.empty()) {
    return refuse(say("{} has no such part in use; check item, side, lot and serial number.",
                      choice.patient));
  }
  std::vector<std::string> different;
  for (const auto& row : found) {
    const auto text = unit_words(row.record);
    if (std::ranges::find(different, text) == different.end()) different.push_back(text);
  }
  if (different.size() > 1) {
    return refuse(
        say("Several parts in use answer to that: {}; say which one.", list_words(different)));
  }
  return *std::ranges::max_element(found, {}, [](const Row<Unit>& row) { return row.record.copy; });
}

/// The movement that handed it out, latest first; nothing for imported units. `of_lot`: see
/// Snapshot::movements_of_lot.
std::optional<StockMovement> issue_of(const std::vector<StockMovement>& of_lot, const Unit& unit) {
  for (const auto& movement : std::views::reverse(of_lot)) {
    if (movement.kind == MovementKind::issue && movement.on == unit.issued_on) return movement;
  }
  return std::nullopt;
}

/// The lot as the ledger knows it, so that its use-by date goes back with the piece.
Lot lot_of(const store::Snapshot& snapshot, const Unit& unit) {
  const auto of_lot = snapshot.movements_of_lot(unit.item, unit.lot);
  if (const auto issued = issue_of(of_lot, unit)) return issued->lot;
  if (!of_lot.empty()) return of_lot.front().lot;
  return {unit.item, unit.lot, std::nullopt};
}

std::string contradiction(const UnitEnding& ending, const Unit& unit, Date today) {
  if (ending.on > today) return said("The day is still to come; say when the part ended.");
  if (ending.on < unit.issued_on) {
    return say("The part was issued on {}, after the day given.", iso_text(unit.issued_on));
  }
  const bool gone = ending.reason == EndReason::lost;
  if (ending.back_to_shelf && gone) return said("A part that is lost cannot come back.");
  const bool used = is_wear(ending.reason) || ending.reason == EndReason::reaction;
  if (ending.unopened && used) {
    return say("A part that ended with '{}' was used, so it is not unopened.",
               shown_word(ending.reason));
  }
  return "";
}

std::optional<StockMovement> movement_back(const store::Snapshot& snapshot, const Unit& unit,
                                           const UnitEnding& ending) {
  if (!ending.back_to_shelf) return std::nullopt;
  StockMovement made;
  made.lot = lot_of(snapshot, unit);
  const bool shelf = ending.unopened && ending.reason != EndReason::recall;
  made.place = shelf ? snapshot.settings().main_place : "quarantine";
  made.kind = MovementKind::give_back;
  made.quantity = 1;
  made.on = ending.on;
  made.reason = fmt::format("back from {}, {}, {}", unit.patient.text, word(ending.reason),
                            ending.unopened ? "unopened" : "opened or used");
  return made;
}

Expected<EndedUnit> decide(const store::Snapshot& snapshot, const Unit& unit,
                           const UnitEnding& ending, Date today) {
  EndedUnit made{unit, std::nullopt};
  if (ending.mistake) {
    auto issued = issue_of(snapshot.movements_of_lot(unit.item, unit.lot), unit);
    if (!issued) {
      return refuse(
          say("No issue of this part is in the ledger, so there is nothing to reverse; end it with "
              "a reason."));
    }
    made.movement = *issued;
    made.movement->kind = MovementKind::give_back;
    made.movement->quantity = 1;
    made.movement->reason = fmt::format("issue to {} reversed", unit.patient.text);
    made.unit.ended_on = unit.issued_on;
    made.unit.end_reason = EndReason::returned;
    return made;
  }
  if (auto wrong = contradiction(ending, unit, today); !wrong.empty()) return refuse(wrong);
  made.movement = movement_back(snapshot, unit, ending);
  made.unit.ended_on = ending.on;
  made.unit.end_reason = ending.reason;
  return made;
}

}  // namespace

bool UnitChoice::answers(const Unit& unit) const {
  return unit.patient.text == patient && (!side || unit.side == *side) &&
         (item.empty() || unit.item.text == item) && (lot.empty() || unit.lot == lot) &&
         (serial.empty() || unit.serial == serial) && (!issued_on || unit.issued_on == *issued_on);
}

std::string hygiene_words() {
  return said("A part that was opened or worn goes to quarantine and is not handed out again.");
}

Expected<EndedUnit> end_unit(store::Store& store, const UnitEnding& ending, Date today,
                             const std::string& who) {
  const auto why = ending.mistake ? std::string{to_say("mistaken issue reversed")}
                                  : fmt::format("part ended: {}", word(ending.reason));
  const auto work = store.begin_write({who, why});
  const auto row = chosen(*work, ending.unit);
  if (!row) return tl::unexpected(row.error());
  auto made = decide(*work, row->record, ending, today);
  if (!made) return made;
  work->put_instead(row->id, made->unit);
  if (made->movement) work->record(*made->movement);
  if (ending.mistake) {
    for (const auto& handover : work->all<Handover>()) {
      if (handover.record.is_of(made->unit)) give_back_booking(*work, handover.record);
    }
  }
  work->commit();
  return made;
}

}  // namespace sparewell::desk
