#include "supply/place_demand.hpp"

#include <algorithm>
#include <map>
#include <unordered_set>

#include "clinic/in_parallel.hpp"
#include "supply/new_starts.hpp"

namespace sparewell::supply {

namespace {

// What a store to which nobody belongs has.
const Lives nobody;
const std::vector<ChangingFrom> no_changes;

}  // namespace

std::vector<double> shares_of_starts(const Clinic& clinic, const Branches& branches,
                                     const std::vector<wear::LifeOfUnit>& lives, Date today) {
  std::vector<double> shares(branches.names().size(), 0.0);
  std::vector<double> users(branches.names().size(), 0.0);
  double all_users = 0;
  std::unordered_set<PatientRef> seen;
  for (const auto& life : lives) {
    const PatientRef& patient = clinic.units[life.unit].patient;
    if (!seen.insert(patient).second) continue;
    ++users[branches.of(patient)];
    ++all_users;
  }
  if (!(all_users > 0)) users.front() = all_users = 1;

  std::map<std::pair<PatientRef, Side>, Date> first_fitted;
  for (const Prosthesis& each : clinic.prostheses) {
    const auto [known, added] =
        first_fitted.try_emplace({each.patient, each.side}, each.delivered_on);
    if (!added) known->second = std::min(known->second, each.delivered_on);
  }
  Date from = today - days{starts_counted_days};
  if (clinic.settings.records_begin) from = std::max(from, *clinic.settings.records_begin);
  double all = 0;
  for (const auto& [side, on] : first_fitted) {
    if (on <= from || on > today) continue;
    ++shares[branches.of(side.first)];
    ++all;
  }
  for (std::size_t p = 0; p < shares.size(); ++p) {
    shares[p] = (shares[p] + patients_weight * users[p] / all_users) / (all + patients_weight);
  }
  return shares;
}

PlaceDemand::PlaceDemand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                         Date today)
    : clinic_{&clinic},
      today_{today},
      branches_{clinic},
      shares_{shares_of_starts(clinic, branches_, lives, today)} {
  for (std::size_t p = 0; p < shares_.size(); ++p) places_.push_back(std::make_unique<OfPlace>());
  if (shares_.front() == 1) {
    places_.front()->demand.emplace(clinic, lives, today);
    return;
  }
  for (const auto& life : lives) {
    places_[branches_.of(clinic.units[life.unit].patient)]->lives.push_back(life);
  }
  in_parallel(places_.size(), [&](std::size_t p) {
    if (shares_[p] > 0) places_[p]->demand.emplace(clinic, places_[p]->lives, today);
  });
}

const Lives& PlaceDemand::users(const ItemCode& item, std::size_t place) const {
  const auto& there = places_[place]->demand;
  return there ? there->users(item) : nobody;
}

ItemDemand PlaceDemand::of(const Item& item, std::size_t place) const {
  return of(item, place, users(item.code, place));
}

ItemDemand PlaceDemand::of(const Item& item, std::size_t place, const Lives& users) const {
  const auto& there = places_[place]->demand;
  if (!there) {
    const auto other =
        std::ranges::find_if(places_, [](const auto& p) { return p->demand.has_value(); });
    return ItemDemand{today_, {nobody, no_changes}, (*other)->demand->fresh()};
  }
  const DemandSources all = there->sources(item);
  DemandSources sources{users, all.changes, all.starts, all.season, all.pairs, all.together};
  if (users.size() != all.users.size()) sources.pairs = pairs_among(*clinic_, users);
  sources.starts.starts *= shares_[place];
  return ItemDemand{today_, std::move(sources), there->fresh()};
}

void tell_places(std::vector<ProposalLine>& lines, const Clinic& clinic,
                 const PlaceDemand& demand) {
  const auto& names = demand.branches().names();
  if (!demand.branches().several()) return;
  const ClinicIndex index{clinic};
  const LeadTimes lead_times{clinic};
  in_parallel(lines.size(), [&](std::size_t i) {
    Reason& reason = lines[i].reason;
    const Item* item = index.item(lines[i].item);
    if (item == nullptr || reason.patient_ordered) return;
    const LeadTime lead = lead_times.of(*item);
    for (std::size_t p = 0; p < names.size(); ++p) {
      const double mean = demand.of(*item, p).until_arrival(reason.next_order_day, lead).mean();
      reason.by_place.push_back({names[p], mean});
    }
  });
}

}  // namespace sparewell::supply
