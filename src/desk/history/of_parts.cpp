#include "clinic/say.hpp"
#include "desk/history/entries.hpp"
#include "desk/part_words.hpp"

namespace sparewell::desk {
namespace {

std::string part_words(const Day& day, const Unit& unit) {
  const Item* item = day.index().item(unit.item);
  if (item == nullptr) return say("{}, not in the catalogue, {}", unit.item.text, lot_words(unit));
  return fmt::format("{} {}, {}", unit.item.text, item_words(*item), lot_words(unit));
}

void add_prosthesis(History& history, const Prosthesis& made) {
  const auto words = say("{} prosthesis, {}, {} suspension", shown_word(made.stage),
                         shown_word(made.level), shown_word(made.suspension));
  history.push_back({Happening::parts, made.delivered_on, made.side,
                     say("Prosthesis delivered: {}", words), std::nullopt});
  if (made.ended_on) {
    history.push_back({Happening::endings, made.ended_on, made.side,
                       say("Prosthesis no longer used: {}", words), std::nullopt});
  }
}

}  // namespace

void add_parts_history(History& history, const Day& day, const PatientRef& patient) {
  for (const Prosthesis& made : day.clinic().prostheses) {
    if (made.patient == patient) add_prosthesis(history, made);
  }
  for (const auto position : day.units_of(patient)) {
    const Unit& unit = day.clinic().units[position];
    const auto part = part_words(day, unit);
    history.push_back(
        {Happening::parts, unit.issued_on, unit.side, say("Issued: {}", part), position});
    if (!unit.ended_on) continue;
    const auto words = unit.end_reason
                           ? say("Ended: {}; reason: {}", part, shown_word(*unit.end_reason))
                           : say("Ended: {}; no reason recorded", part);
    history.push_back({Happening::endings, unit.ended_on, unit.side, words, position});
  }
}

}  // namespace sparewell::desk
