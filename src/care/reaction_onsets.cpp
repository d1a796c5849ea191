#include "care/reaction_onsets.hpp"

#include <algorithm>

namespace sparewell::care {
namespace {

/// A reaction in the log or the end of a part, before those of one reaction are put together.
struct Sign {
  Date day;
  Date last;  ///< of the reaction
  bool recorded = false;
  std::vector<ItemCode> ended;
};

std::vector<Sign> signs_of(const Clinic& clinic, const PatientRef& patient, Side side, Date today) {
  std::vector<Sign> found;
  for (const Reaction& reaction : clinic.reactions) {
    if (reaction.patient != patient || reaction.began_on > today) continue;
    if (reaction.side && *reaction.side != side) continue;
    found.push_back({reaction.began_on, reaction.ended_on.value_or(reaction.began_on), true, {}});
  }
  for (const Unit& unit : clinic.units) {
    if (unit.patient != patient || unit.side != side) continue;
    if (unit.end_reason != EndReason::reaction || !unit.ended_on || *unit.ended_on > today)
      continue;
    found.push_back({*unit.ended_on, *unit.ended_on, false, {unit.item}});
  }
  std::ranges::stable_sort(found, {}, [](const Sign& sign) {
    return std::pair{sign.day, !sign.recorded};
  });
  return found;
}

}  // namespace

std::vector<Onset> onsets_of(const Clinic& clinic, const PatientRef& patient, Side side,
                             Date today) {
  std::vector<Onset> made;
  for (Sign& sign : signs_of(clinic, patient, side, today)) {
    const Date over = std::max(sign.day + days{same_reaction_days}, sign.last) + days{1};
    if (made.empty() || sign.day >= made.back().over) {
      made.push_back({sign.day, over, sign.recorded, std::move(sign.ended)});
      continue;
    }
    Onset& same = made.back();
    // The end of a part treats a reaction; only what is recorded makes it last longer.
    same.recorded = same.recorded || sign.recorded;
    if (sign.recorded) same.over = std::max(same.over, over);
    for (auto& item : sign.ended) {
      if (std::ranges::find(same.ended, item) == same.ended.end()) same.ended.push_back(item);
    }
  }
  return made;
}

DaySpans days_at_risk(const DaySpans& observed, const std::vector<Onset>& onsets) {
  DaySpans taken;
  for (const Onset& onset : onsets) taken.push_back({onset.day + days{1}, onset.over});
  return without(observed, taken);
}

}  // namespace sparewell::care
