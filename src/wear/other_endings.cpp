#include "wear/other_endings.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "wear/entry.hpp"

namespace sparewell::wear {
namespace {

constexpr double days_in_year = 365.25;

struct Seen {
  double days = 0;
  std::array<double, other_reasons.size()> endings{};
};

/// The days on which parts of a kind were worn out on a patient's side.
class WornDays {
 public:
  WornDays(const Clinic& clinic, const ClinicIndex& index) {
    for (const Unit& unit : clinic.units) {
      const Item* item = index.item(unit.item);
      if (item && unit.ended_on && unit.end_reason && is_wear(*unit.end_reason)) {
        days_.insert({unit.patient, unit.side, item->kind, *unit.ended_on});
      }
    }
  }
  /// That the unit, which has ended otherwise, went with another that was worn out: they were
  /// exchanged together, and the patient goes on with the item.
  [[nodiscard]] bool ended_with_another(const Unit& unit, Kind kind) const {
    const EndReason reason = *unit.end_reason;
    const bool may_go_along =
        reason == EndReason::returned || reason == EndReason::upgrade || reason == EndReason::other;
    return may_go_along && days_.contains({unit.patient, unit.side, kind, *unit.ended_on});
  }

 private:
  std::set<std::tuple<PatientRef, Side, Kind, Date>> days_;
};

std::map<Kind, Seen> seen_by_kind(const Clinic& clinic, Date today,
                                  std::optional<Date> records_begin) {
  const ClinicIndex index{clinic};
  const Entries entries{clinic, today, records_begin};
  const WornDays worn{clinic, index};
  std::map<Kind, Seen> all;
  for (std::size_t k = 0; k < words<Kind>().size(); ++k) all[static_cast<Kind>(k)];
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (!item || unit.issued_on > today) continue;
    const bool ended = unit.ended_on && *unit.ended_on <= today;
    const auto entry = entries.of(unit);
    if (ended && entry && *unit.ended_on <= *entry) continue;
    const Date from = std::min(today, entry.value_or(unit.issued_on));
    const double days = days_between(from, ended ? *unit.ended_on : today);
    Seen& seen = all[item->kind];
    seen.days += std::max(days, ended ? 0.5 : 0.0);
    if (ended && unit.end_reason && !is_wear(*unit.end_reason) &&
        !worn.ended_with_another(unit, item->kind)) {
      seen.endings[position_of(*unit.end_reason)] += 1;
    }
  }
  return all;
}

EndingRate posterior(double prior_endings, double prior_days, double endings, double days) {
  // Nothing believed and nothing seen: no rate, instead of 0 / 0.
  if (!(prior_days + days > 0)) return {};
  return {prior_endings + endings, prior_days + days};
}

}  // namespace

std::size_t position_of(EndReason reason) {
  return static_cast<std::size_t>(std::ranges::find(other_reasons, reason) - other_reasons.begin());
}

double EndingRate::hazard(double t) const {
  return endings > 0 ? endings * std::log1p(t / days) : 0;
}

std::map<Kind, OtherEndings> other_endings(const Clinic& clinic, const PriorTable& priors,
                                           Date today, std::optional<Date> records_begin) {
  std::map<Kind, OtherEndings> made;
  for (const auto& [kind, seen] : seen_by_kind(clinic, today, records_begin)) {
    for (std::size_t i = 0; i < other_reasons.size(); ++i) {
      const auto prior = std::ranges::find_if(priors.endings, [&](const EndingPrior& row) {
        return row.kind == kind && row.reason == other_reasons[i];
      });
      const bool believed = prior != priors.endings.end();
      const double prior_days = believed ? prior->weight_years * days_in_year : 0;
      const double prior_endings = believed ? prior->per_year * prior->weight_years : 0;
      made[kind].rates[i] = posterior(prior_endings, prior_days, seen.endings[i], seen.days);
    }
  }
  return made;
}

OtherEndings of_kind(const std::map<Kind, OtherEndings>& all, Kind kind) {
  const auto found = all.find(kind);
  return found == all.end() ? OtherEndings{} : found->second;
}

}  // namespace sparewell::wear
