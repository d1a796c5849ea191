#include "supply/patient_order.hpp"

#include <algorithm>

#include "supply/booked.hpp"

namespace sparewell::supply {
namespace {

struct Candidate {
  const wear::LifeOfUnit* life;
  Date order_by;
};

/// Units that are expected to wear out, the most urgent first.
std::vector<Candidate> by_urgency(const ItemCase& given) {
  const days margin{given.lead.quantile(late_arrival_quantile)};
  std::vector<Candidate> made;
  for (const auto* life : given.lives) {
    if (const auto early = life->life.worn_out_date(early_quantile)) {
      made.push_back({life, *early - margin});
    }
  }
  std::ranges::stable_sort(made, {}, &Candidate::order_by);
  return made;
}

/// Takes promised pieces off `available`, the soonest first, and the units they are for off
/// `candidates`; those that are due are not among these from the start (booked.hpp). Returns the
/// patients whose due pieces are not there.
std::vector<PatientRef> serve_reservations(const ItemCase& given, int& available,
                                           std::vector<Candidate>& candidates) {
  std::vector<PatientRef> missing;
  for (const Reservation* reservation : given.book.reservations(given.item.code)) {
    const bool due = is_due(*reservation, given.booked_until);
    for (int piece = 0; piece < reservation->quantity; ++piece) {
      if (available == 0) {
        if (due) missing.push_back(reservation->patient);
        continue;
      }
      --available;
      if (due) continue;
      // A piece that lies there for a later visit is there when the part wears out before it.
      const auto served = std::ranges::find(
          candidates, reservation->patient,
          [&](const Candidate& c) { return given.clinic.units[c.life->unit].patient; });
      if (served != candidates.end()) candidates.erase(served);
    }
  }
  return missing;
}

/// Of at least one of the units being worn out before an order of the next order day arrives.
double chance_any_worn(const ItemCase& given, const std::vector<Candidate>& units) {
  double chance = 0;
  for (const LeadTime::Day& day : given.lead.distribution()) {
    double none = 1;
    for (const Candidate& unit : units) {
      none *= 1 - unit.life->life.chance_worn_by(given.next_order_day + days{day.days});
    }
    chance += day.chance * (1 - none);
  }
  return chance;
}

void name_needs(const ItemCase& given, const std::vector<Candidate>& units, Reason& reason) {
  for (const Candidate& unit : units) {
    const double chance = chance_worn_by_arrival(unit.life->life, given.next_order_day, given.lead);
    reason.needs.push_back(need_of(given, *unit.life, chance));
    reason.needs.back().order_by = unit.order_by;
    reason.needs.back().chance_before_this_order =
        chance_worn_by_arrival(unit.life->life, given.order_on, given.lead);
  }
  std::ranges::stable_sort(reason.needs, std::ranges::greater{}, &ExpectedNeed::chance);
}

}  // namespace

std::optional<ProposalLine> patient_order_line(const ItemCase& given) {
  auto candidates = by_urgency(given);
  int available = given.position.on_hand + given.position.in_transit + given.position.on_order;
  auto missing = serve_reservations(given, available, candidates);
  const auto covered = std::min(candidates.size(), static_cast<std::size_t>(available));
  candidates.erase(candidates.begin(), candidates.begin() + static_cast<std::ptrdiff_t>(covered));
  std::erase_if(candidates, [&](const Candidate& c) { return c.order_by >= given.next_order_day; });
  const int needed = static_cast<int>(candidates.size() + missing.size());
  if (needed == 0) return std::nullopt;

  ProposalLine line = line_for(given, needed);
  line.target = line.on_hand + line.in_transit + line.on_order + needed;
  if (missing.empty()) {
    line.order_by = std::max(given.today, candidates.front().order_by);
    line.chance_short = chance_any_worn(given, candidates);
  } else {
    line.chance_short = 1;
  }
  ItemDemand demand = demand_of(given);
  line.reason.expected_demand = demand.until_arrival(given.next_order_day, given.lead).mean();
  line.reason.expected_not_for_wear = demand.not_for_wear(given.next_order_day, given.lead);
  line.reason.season_factor = demand.season_factor(line.reason.protected_until);
  line.reason.expected_for_new_patients = demand.for_new_patients(given.next_order_day, given.lead);
  line.reason.reserved_for = std::move(missing);
  name_needs(given, candidates, line.reason);
  return line;
}

}  // namespace sparewell::supply
