#include "supply/demand.hpp"

#include <algorithm>
#include <tuple>

#include "supply/proposal.hpp"

namespace sparewell::supply {

std::unordered_map<ItemCode, Lives> lives_by_item(const Clinic& clinic,
                                                  const std::vector<wear::LifeOfUnit>& lives) {
  std::unordered_map<ItemCode, Lives> made;
  for (const auto& life : lives) made[clinic.units[life.unit].item].push_back(&life);
  for (auto& [item, of_item] : made) {
    std::ranges::sort(of_item, {}, [&](const wear::LifeOfUnit* life) {
      const Unit& unit = clinic.units[life->unit];
      return std::tie(unit.patient, unit.side, unit.lot, unit.serial, unit.issued_on, unit.copy);
    });
  }
  return made;
}

const Pmf& ItemDemand::until(Date end) {
  const auto found = known_.find(end);
  if (found != known_.end()) return found->second;
  std::vector<Pmf> counts;
  counts.reserve(lives_->size());
  for (const auto* life : *lives_) counts.push_back(replacements(life->life, end, *fresh_));
  return known_.emplace(end, convolve_all(std::move(counts))).first->second;
}

Pmf ItemDemand::until_arrival(Date from, const LeadTime& lead) {
  std::vector<double> weights;
  std::vector<Pmf> parts;
  for (const LeadTime::Day& day : lead.distribution()) {
    weights.push_back(day.chance);
    parts.push_back(until(from + days{day.days}));
  }
  return mix(weights, parts);
}

double chance_worn_by_arrival(const wear::UnitLife& life, Date from, const LeadTime& lead) {
  double chance = 0;
  for (const LeadTime::Day& day : lead.distribution()) {
    chance += day.chance * life.chance_worn_by(from + days{day.days});
  }
  return chance;
}

Pmf demand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, const ItemCode& item,
           Date today, int days_ahead) {
  const auto by_item = lives_by_item(clinic, lives);
  const auto found = by_item.find(item);
  if (found == by_item.end()) return Pmf{};
  FreshCountsCache fresh;
  return ItemDemand{found->second, fresh}.until(today + days{days_ahead});
}

}  // namespace sparewell::supply
