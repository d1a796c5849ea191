#include "desk/reaction_log.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "care/sensitivity.hpp"
#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// nullptr where the catalogue does not have the item, which may touch the skin then.
bool touches_skin(const Unit& unit, const Item* item) {
  return unit.share != 0.0 && (item == nullptr || care::usually_touches_skin(item->kind));
}

std::string material_words(const Item* item) {
  if (item == nullptr) return "";
  const auto kind = item->kind == Kind::sleeve ? shown_word(item->kind) : kind_words(*item);
  return item->material == Material::other ? kind
                                           : say("{1} {0}", kind, shown_word(item->material));
}

std::string side_words(const std::optional<Side>& side) {
  return side ? shown_word(*side) : said("not of one side");
}

std::vector<WornThen> worn_then(const Clinic& clinic, const ClinicIndex& index,
                                const PatientRef& patient, const std::optional<Side>& side,
                                Date day) {
  std::vector<WornThen> made;
  for (const Unit& unit : clinic.units) {
    if (unit.patient != patient || (side && unit.side != *side)) continue;
    const Item* item = index.item(unit.item);
    const bool there = unit.issued_on < day && (!unit.ended_on || *unit.ended_on >= day);
    if (!there || !touches_skin(unit, item)) continue;
    const WornThen then{unit.side,      unit.item,     material_words(item),
                        unit.issued_on, unit.ended_on, unit.end_reason == EndReason::reaction};
    // Several pieces of one item are one line, since the first of them.
    const auto same = std::ranges::find_if(made, [&](const WornThen& each) {
      return each.item == then.item && each.side == then.side;
    });
    if (same == made.end()) {
      made.push_back(then);
    } else {
      same->since = std::min(same->since, then.since);
      same->ended_for_it = same->ended_for_it || then.ended_for_it;
    }
  }
  return made;
}

}  // namespace

std::string reaction_words(const Reaction& reaction) {
  const auto signs = list_words(reaction.signs);
  const auto side = side_words(reaction.side);
  const auto began = date_words(reaction.began_on);
  return reaction.ended_on
             ? say("{}, {}, from {} until {}", signs, side, began, date_words(*reaction.ended_on))
             : say("{}, {}, from {} on", signs, side, began);
}

std::string worn_words(const WornThen& worn, Date day) {
  const auto since = date_words(worn.since);
  const auto span = count_words(days_between(worn.since, day), "day", "days");
  auto words = worn.kind.empty()
                   ? say("{} since {} ({})", worn.item.text, since, span)
                   : say("{}, {}, since {} ({})", worn.item.text, worn.kind, since, span);
  if (worn.ended_for_it) {
    words += say(", ended on {} because of a reaction", date_words(*worn.ended_on));
  }
  return words;
}

std::vector<LogEntry> reaction_log(const Clinic& clinic, const PatientRef& patient, Date today) {
  const ClinicIndex index{clinic};
  std::vector<LogEntry> made;
  const auto add = [&](std::optional<Reaction> reaction, Date day, std::optional<Side> side) {
    made.push_back({std::move(reaction), day, side, worn_then(clinic, index, patient, side, day)});
  };
  for (const Reaction& reaction : clinic.reactions) {
    if (reaction.patient == patient && reaction.began_on <= today) {
      add(reaction, reaction.began_on, reaction.side);
    }
  }
  for (const Side side : {Side::left, Side::right}) {
    for (const auto& onset : care::onsets_of(clinic, patient, side, today)) {
      if (!onset.recorded) add(std::nullopt, onset.day, side);
    }
  }
  std::ranges::stable_sort(made, std::greater{}, &LogEntry::day);
  return made;
}

std::string entry_words(const LogEntry& entry) {
  if (entry.recorded) {
    auto words = capitalised(reaction_words(*entry.recorded)) + ".";
    if (!entry.recorded->note.empty()) words += say(" Note: {}", entry.recorded->note);
    return words;
  }
  return say("On {} a part was ended because of a reaction, {}; none is recorded.",
             date_words(entry.day), side_words(entry.side));
}

WornChart worn_chart(const Clinic& clinic, const PatientRef& patient, Date today) {
  const ClinicIndex index{clinic};
  WornChart made;
  made.today = today;
  made.from = today - days{120};
  made.reactions = reaction_log(clinic, patient, today);
  for (const auto& entry : made.reactions) made.from = std::min(made.from, entry.day);
  for (const Side side : {Side::left, Side::right}) {
    std::vector<std::pair<const Unit*, WornStrip>> rows;
    for (const Unit& unit : clinic.units) {
      const Item* item = index.item(unit.item);
      if (unit.patient != patient || unit.side != side || unit.issued_on > today) continue;
      if (!touches_skin(unit, item)) continue;
      auto row = std::ranges::find_if(
          rows, [&](const auto& each) { return each.first->item == unit.item; });
      if (row == rows.end()) {
        rows.emplace_back(
            &unit,
            WornStrip{"", fmt::format("{} {}", unit.item.text, material_words(item)), "", {}});
        row = rows.end() - 1;
      }
      row->second.worn.push_back({unit.issued_on, unit.ended_on.value_or(today + days{1})});
      made.from = std::min(made.from, unit.issued_on);
    }
    if (rows.empty()) continue;
    std::ranges::stable_sort(rows, {}, [](const auto& row) { return row.first->issued_on; });
    made.strips.push_back(
        {side == Side::left ? said("Left side") : said("Right side"), "", "", {}});
    for (auto& [unit, strip] : rows) {
      strip.worn = care::united(std::move(strip.worn));
      std::vector<std::string> spans;
      for (const auto& span : strip.worn) {
        const auto from = date_words(span.from);
        spans.push_back(span.until > today ? say("from {} on", from)
                                           : say("from {} until {}", from, date_words(span.until)));
      }
      strip.words = say("{}, worn {}.", strip.label, list_words(spans));
      made.strips.push_back(std::move(strip));
    }
  }
  return made;
}

}  // namespace sparewell::desk
