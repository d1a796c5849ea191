#include "care/suspects.hpp"

#include <algorithm>

namespace sparewell::care {
namespace {

/// Those with the same days at risk together, in the order of their basis and names.
std::vector<Suspect> grouped(std::vector<Exposure> exposures, const DaySpans& at_risk) {
  std::ranges::stable_sort(exposures, {}, &Exposure::basis);
  std::vector<Suspect> made;
  std::vector<DaySpans> days_of;
  for (Exposure& exposure : exposures) {
    auto exposed = common(exposure.spans, at_risk);
    if (exposed.empty()) continue;
    const auto same = std::ranges::find(days_of, exposed);
    if (same == days_of.end()) {
      days_of.push_back(std::move(exposed));
      made.emplace_back().alike.push_back(std::move(exposure));
    } else {
      made[static_cast<std::size_t>(same - days_of.begin())].alike.push_back(std::move(exposure));
    }
  }
  return made;
}

Ranking ranked(std::vector<Exposure> exposures, const Suspects& known, const SuspectPrior& prior) {
  Ranking made;
  made.suspects = grouped(std::move(exposures), known.at_risk);
  std::vector<OnsetCounts> counts;
  for (Suspect& suspect : made.suspects) {
    const DaySpans exposed = common(suspect.alike.front().spans, known.at_risk);
    OnsetCounts& of = suspect.counts;
    of.onsets = static_cast<int>(known.onsets.size());
    of.days = day_count(known.at_risk);
    of.exposed_days = day_count(exposed);
    for (const Onset& onset : known.onsets) of.exposed_onsets += holds(exposed, onset.day) ? 1 : 0;
    suspect.ratio = rate_ratio(of);
    counts.push_back(of);
  }
  const auto chances = suspect_chances(counts, prior);
  made.none = chances.none;
  for (std::size_t i = 0; i < made.suspects.size(); ++i) {
    made.suspects[i].chance = chances.chances[i];
  }
  std::ranges::stable_sort(made.suspects, std::greater{}, &Suspect::chance);
  return made;
}

}  // namespace

Suspects suspects_of(const Clinic& clinic, const PatientRef& patient, Side side,
                     const SubstanceTable& table, Date today, const SuspectPrior& prior) {
  Suspects made;
  made.patient = patient;
  made.side = side;
  auto exposures = exposures_of(clinic, ClinicIndex{clinic}, patient, side, table, today);
  made.onsets = onsets_of(clinic, patient, side, today);
  made.at_risk = days_at_risk(exposures.observed, made.onsets);
  const auto gone = std::erase_if(
      made.onsets, [&](const Onset& onset) { return !holds(made.at_risk, onset.day); });
  made.not_observed = static_cast<int>(gone);
  made.not_known = std::move(exposures.not_known);
  std::ranges::copy_if(clinic.sensitivities, std::back_inserter(made.recorded),
                       [&](const Sensitivity& noted) { return noted.patient == patient; });
  made.substances = ranked(std::move(exposures.substances), made, prior);
  made.items = ranked(std::move(exposures.items), made, prior);
  return made;
}

std::vector<Side> sides_worn(const Clinic& clinic, const PatientRef& patient) {
  std::vector<Side> made;
  for (const Side side : {Side::left, Side::right}) {
    const bool worn = std::ranges::any_of(clinic.units, [&](const Unit& unit) {
      return unit.patient == patient && unit.side == side;
    });
    const bool reacted = std::ranges::any_of(clinic.reactions, [&](const Reaction& reaction) {
      return reaction.patient == patient && reaction.side == side;
    });
    if (worn || reacted) made.push_back(side);
  }
  return made;
}

}  // namespace sparewell::care
