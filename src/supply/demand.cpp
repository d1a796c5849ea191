#include "supply/demand.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "supply/proposal.hpp"

namespace sparewell::supply {
namespace {

/// The mean of `at` over the dates on which something ordered on `from` may arrive.
template <class At>
double over_arrivals(Date from, const LeadTime& lead, At at) {
  double mean = 0;
  for (const LeadTime::Day& day : lead.distribution()) {
    mean += day.chance * at(from + days{day.days});
  }
  return mean;
}

/// The sum of tails at moments with such weights.
std::vector<double> interpolated(const std::vector<std::vector<double>>& at_moments,
                                 const std::vector<double>& weights) {
  std::vector<double> sum;
  for (std::size_t moment = 0; moment < at_moments.size(); ++moment) {
    const auto& there = at_moments[moment];
    if (there.size() > sum.size()) sum.resize(there.size(), 0.0);
    for (std::size_t n = 0; n < there.size(); ++n) sum[n] += weights[moment] * there[n];
  }
  return sum;
}

}  // namespace

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

double ChangingFrom::chance(double days) const {
  // Simpson's rule: rates hardly change within an interval between orders.
  double sum = 0;
  for (std::size_t i = 0; i < changing_reasons.size(); ++i) {
    const auto& rate = others.of(changing_reasons[i]);
    const auto incidence = [&](double at) {
      return rate.per_day_after(at) * std::exp(-leaving_hazard(others, at));
    };
    sum +=
        chance_of_this[i] * days / 6 * (incidence(0) + 4 * incidence(days / 2) + incidence(days));
  }
  return sum;
}

ChangesToItem changes_to_items(const Clinic& clinic,
                               const std::unordered_map<ItemCode, Lives>& lives, Date today) {
  const Successors successors{clinic, today};
  std::map<ItemCode, const Lives*> in_order;
  for (const auto& [item, of_item] : lives) in_order.emplace(item, &of_item);
  ChangesToItem made;
  for (const auto& [from, of_item] : in_order) {
    std::map<ItemCode, ChangingFrom> by_item;
    for (std::size_t i = 0; i < changing_reasons.size(); ++i) {
      if (!(of_item->front()->others.of(changing_reasons[i]).endings > 0)) continue;
      for (const auto& [to, chance] : successors.of(from, changing_reasons[i])) {
        by_item[to].chance_of_this[i] = chance;
      }
    }
    for (auto& [to, changing] : by_item) {
      changing.units = static_cast<int>(of_item->size());
      changing.others = of_item->front()->others;
      made[to].push_back(changing);
    }
  }
  return made;
}

const Pmf& ItemDemand::until(Date end) {
  return until_day(std::max(0, days_between(today_, end)));
}

double ItemDemand::clock(int day) const {
  return sources_.season == nullptr ? day : sources_.season->clock(today_, day);
}

const Pmf& ItemDemand::until_day(int day) {
  const auto found = known_.find(day);
  if (found != known_.end()) return found->second;
  const double at = clock(day);
  const bool between = spread_ && at > spread_->moments.first() && at < spread_->moments.last();
  const auto weights = between ? spread_->moments.weights(at) : std::vector<double>{};
  std::vector<Pmf> counts;
  counts.reserve(sources_.users.size() + sources_.changes.size() + 1);
  for (std::size_t unit = 0; unit < sources_.users.size(); ++unit) {
    counts.push_back(pmf_of_tails(between && !spread_->tails[unit].empty()
                                      ? interpolated(spread_->tails[unit], weights)
                                      : tails_of(unit, at)));
  }
  for (const ChangingFrom& from : sources_.changes) {
    counts.push_back(binomial(from.units, from.chance(day)));
  }
  if (sources_.starts.starts > 0) counts.push_back(sources_.starts.in(day));
  return known_.emplace(day, convolve_all(std::move(counts))).first->second;
}

std::vector<double> ItemDemand::tails_of(std::size_t unit, double days) const {
  const auto& of_unit = *sources_.users[unit];
  return replacement_tails(of_unit.life, days, *fresh_, of_unit.others);
}

void ItemDemand::spread_over(double first, double last) {
  if (spread_ && spread_->moments.first() <= first && spread_->moments.last() >= last) return;
  spread_.emplace(Spread{Moments{first, last}, {}});
  spread_->tails.resize(sources_.users.size());
  for (std::size_t unit = 0; unit < sources_.users.size(); ++unit) {
    // Where the rate of wear changes on the way the tails are not smooth.
    if (sources_.users[unit]->life.changes_between(first, last)) continue;
    for (const double days : spread_->moments.at()) {
      spread_->tails[unit].push_back(tails_of(unit, days));
    }
  }
}

Pmf ItemDemand::until_arrival(Date from, const LeadTime& lead) {
  const int waited = std::max(0, days_between(today_, from));
  const auto& arrivals = lead.distribution();
  // From today, so that one spread serves every day on which the order might be written.
  if (arrivals.size() > 1) {
    spread_over(clock(arrivals.front().days), clock(waited + arrivals.back().days));
  }
  std::vector<double> weights;
  std::vector<Pmf> parts;
  for (const LeadTime::Day& day : arrivals) {
    weights.push_back(day.chance);
    parts.push_back(until_day(waited + day.days));
  }
  return mix(weights, parts);
}

double ItemDemand::not_for_wear(Date from, const LeadTime& lead) const {
  return over_arrivals(from, lead, [&](Date arrival) {
    const double days = std::max(0, days_between(today_, arrival));
    double mean = 0;
    if (!sources_.users.empty()) {
      mean += static_cast<double>(sources_.users.size()) *
              expected_losses(sources_.users.front()->others, days);
    }
    for (const ChangingFrom& from_other : sources_.changes) {
      mean += from_other.units * from_other.chance(days);
    }
    return mean;
  });
}

double ItemDemand::for_new_patients(Date from, const LeadTime& lead) const {
  return over_arrivals(from, lead, [&](Date arrival) {
    return sources_.starts.mean_in(std::max(0, days_between(today_, arrival)));
  });
}

double ItemDemand::season_factor(Date end) const {
  const int days = days_between(today_, end);
  return days > 0 ? clock(days) / days : 1;
}

double at_most_needed_by_arrival(const wear::LifeOfUnit& unit, Date from, const LeadTime& lead) {
  return over_arrivals(
      from, lead, [&](Date arrival) { return at_most_replaced(unit.life, arrival, unit.others); });
}

double chance_needed_by_arrival(const wear::LifeOfUnit& unit, Date from, const LeadTime& lead) {
  return over_arrivals(from, lead, [&](Date arrival) {
    return chance_of_replacement(unit.life, arrival, unit.others);
  });
}

double chance_worn_by_arrival(const wear::UnitLife& life, Date from, const LeadTime& lead) {
  return over_arrivals(from, lead, [&](Date arrival) { return life.chance_worn_by(arrival); });
}

}  // namespace sparewell::supply
