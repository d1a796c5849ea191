#include "desk/limb_drawing/limb_chain.hpp"

#include <algorithm>
#include <tuple>

#include "care/chain.hpp"
#include "care/worn.hpp"
#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/limb_drawing/chain_verdicts.hpp"
#include "desk/part_life.hpp"
#include "desk/part_words.hpp"
#include "desk/suspension_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

ChainPlace place_of(Kind kind) {
  switch (kind) {
    case Kind::liner:
      return ChainPlace::interface;
    case Kind::sock:
      return ChainPlace::sock;
    case Kind::sleeve:
      return ChainPlace::sleeve;
    case Kind::pin:
      return ChainPlace::pin;
    case Kind::lock:
      return ChainPlace::lock;
    case Kind::valve:
      return ChainPlace::valve;
    default:
      return ChainPlace::pump;
  }
}

ChainPlace place_of(care::Function function) {
  for (const auto& part : built_in_chain_rules().parts) {
    if (part.function == function) return place_of(part.kind);
  }
  return ChainPlace::not_known;
}

ChainRow row_of(const Day& day, std::size_t position, const std::vector<PatientFinding>& found) {
  const Unit& unit = day.clinic().units[position];
  const Item* item = day.index().item(unit.item);
  ChainRow row;
  row.id = std::to_string(position);
  row.unit = position;
  row.place = item ? place_of(item->kind) : ChainPlace::not_known;
  row.title =
      item ? fmt::format("{}, {}", capitalised(kind_words(*item)), unit.item.text) : unit.item.text;
  row.dates = say("issued {}, worn {}", date_words(unit.issued_on), share_of_part(day, position));
  if (item && item->size_label.empty()) {
    row.facts = shown_word(item->material);
  } else if (item) {
    row.facts = say("{}, size {}", shown_word(item->material), item->size_label);
  } else {
    row.facts = said("not in the catalogue");
  }
  row.life = strip_of_part(day, position);
  row.verdicts = chain_verdicts(found, unit.side, unit.item, item != nullptr);
  row.words = fmt::format("{}: {}, {}. {}{}", row.title, row.facts, row.dates, row.life->words,
                          finding_sentences(found, unit.side, unit.item));
  return row;
}

ChainRow missing_row(const PatientFinding& finding) {
  const auto function = function_words(*finding.missing);
  ChainRow row;
  row.id = missing_id(finding);
  row.place = place_of(*finding.missing);
  row.title = say("missing: {}", function);
  row.verdicts = {{Standing::look, say("nothing recorded as worn does this")}};
  row.words = finding.finding.words;
  return row;
}

/// Of several that do the same, what is worn most stands first.
void put_in_order(std::vector<ChainRow>& rows, const Clinic& clinic) {
  std::ranges::stable_sort(rows, {}, [&](const ChainRow& row) {
    const bool drawer = row.unit && clinic.units[*row.unit].share == 0.0;
    const Date issued = row.unit ? clinic.units[*row.unit].issued_on : Date{};
    return std::tuple{row.place, drawer, issued};
  });
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const auto& before = rows[i - 1];
    if (rows[i].missing() || before.missing() || rows[i].place == ChainPlace::not_known) continue;
    rows[i].further = rows[i].place == before.place;
    // One item is judged once.
    if (rows[i].further && rows[i].title == before.title) rows[i].verdicts.clear();
  }
}

std::string held_words(const Prosthesis* prosthesis) {
  if (prosthesis == nullptr) return say("no prosthesis is recorded as in use");
  return say("{}, {} suspension, {}", shown_word(prosthesis->level),
             shown_word(prosthesis->suspension), shown_word(prosthesis->stage));
}

}  // namespace

std::string missing_id(const PatientFinding& finding) {
  return fmt::format("missing {} {}", word(finding.side.value_or(Side::left)),
                     word(finding.missing.value_or(care::Function::locking_liner)));
}

std::vector<SideChain> limb_chains(const Day& day, const PatientRef& patient,
                                   const std::vector<PatientFinding>& findings) {
  std::vector<SideChain> made;
  for (const Side side : {Side::left, Side::right}) {
    SideChain chain;
    chain.side = side;
    const auto* worn = care::prosthesis_in_use(day.clinic().prostheses, patient, side, day.today());
    if (worn != nullptr) chain.prosthesis = *worn;
    chain.held_by = held_words(worn);
    for (const auto position : day.units_of(patient)) {
      const Unit& unit = day.clinic().units[position];
      if (unit.side != side || !unit.in_use_on(day.today())) continue;
      chain.rows.push_back(row_of(day, position, findings));
    }
    for (const auto& finding : findings) {
      if (finding.side != side || !finding.missing) continue;
      chain.rows.push_back(missing_row(finding));
    }
    put_in_order(chain.rows, day.clinic());
    if (chain.prosthesis || !chain.rows.empty()) made.push_back(std::move(chain));
  }
  return made;
}

}  // namespace sparewell::desk
