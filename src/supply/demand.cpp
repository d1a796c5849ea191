#include "supply/demand.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "supply/common_cause.hpp"
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

/// `day`, or the last day before on which the unit's patient needs the item.
Date while_needed(const wear::LifeOfUnit& unit, Date day) {
  return std::min(day, unit.needed_until.value_or(day));
}

}  // namespace

std::unordered_map<ItemCode, Lives> lives_by_item(const Clinic& clinic,
                                                  const std::vector<wear::LifeOfUnit>& lives) {
  std::unordered_map<ItemCode, Lives> made;
  for (const auto& life : lives) {
    made[life.next_item.value_or(clinic.units[life.unit].item)].push_back(&life);
  }
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

int ChangingFrom::units() const {
  int sum = 0;
  for (const auto& [in_use, count] : wearers) sum += in_use * count;
  return sum;
}

Pmf ChangingFrom::pieces(double chance) const {
  Pmf sum;
  for (const auto& [in_use, count] : wearers) {
    sum = convolve(sum, times(in_use, binomial(count, chance)));
  }
  return sum;
}

namespace {

/// Wearers by how many of the units they have in use on a side; those of one are neighbours.
std::map<int, int> wearers_of(const Clinic& clinic, const Lives& users) {
  std::map<int, int> made;
  for (std::size_t from = 0; from < users.size();) {
    const Unit& first = clinic.units[users[from]->unit];
    std::size_t to = from + 1;
    while (to < users.size() && clinic.units[users[to]->unit].patient == first.patient &&
           clinic.units[users[to]->unit].side == first.side) {
      ++to;
    }
    ++made[static_cast<int>(to - from)];
    from = to;
  }
  return made;
}

}  // namespace

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
      changing.wearers = wearers_of(clinic, *of_item);
      changing.others = of_item->front()->others;
      made[to].push_back(changing);
    }
  }
  return made;
}

ItemDemand::ItemDemand(Date today, DemandSources sources, FreshCountsCache& fresh)
    : today_{today},
      sources_{std::move(sources)},
      fresh_{&fresh},
      in_pair_(sources_.users.size(), false) {
  for (const auto& [first, second] : sources_.pairs) {
    firsts_.push_back(first_of_two(*sources_.users[first]));
    in_pair_[first] = in_pair_[second] = true;
  }
}

void ItemDemand::expect_days(Date first, Date last) {
  spread_over(clock(std::max(0, days_between(today_, first))),
              clock(std::max(0, days_between(today_, last))));
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
  std::vector<Pmf> counts;
  counts.reserve(sources_.changes.size() + 2);
  if (!sources_.users.empty()) counts.push_back(of_users(clock(day)));
  for (const ChangingFrom& from : sources_.changes) {
    counts.push_back(from.pieces(from.chance(day)));
  }
  if (sources_.starts.starts > 0) counts.push_back(sources_.starts.in(day));
  return known_.emplace(day, convolve_all(std::move(counts))).first->second;
}

Pmf ItemDemand::of_users(double at) const {
  const bool between = spread_ && at > spread_->moments.first() && at < spread_->moments.last();
  const auto weights = between ? spread_->moments.weights(at) : std::vector<double>{};
  std::vector<double> tails;
  const auto find_tails = [&](std::size_t part) {
    if (between && spread_->parts[part].known) {
      spread_->interpolate(part, weights, tails);
    } else {
      tails = tails_of(part, at);
    }
  };
  const auto count = [&](std::size_t part) {
    find_tails(part);
    return pmf_of_tails(tails);
  };
  const std::size_t users = sources_.users.size();
  CountSum counts;
  for (std::size_t user = 0; user < users; ++user) {
    if (in_pair_[user]) continue;
    find_tails(user);
    counts.add(tails);
  }
  for (std::size_t pair = 0; pair < firsts_.size(); ++pair) {
    const auto& [first, second] = sources_.pairs[pair];
    counts.add(mix({1 - sources_.together, sources_.together},
                   {convolve(count(first), count(second)), times(2, count(users + pair))}));
  }
  return with_common_cause(std::move(counts).sum(), sources_.users.front()->law_spread);
}

void ItemDemand::Spread::add(const std::vector<std::vector<double>>& at_moments) {
  OfPart made{tails.size(), 0, true};
  for (const auto& there : at_moments) made.count = std::max(made.count, there.size());
  for (const auto& there : at_moments) {
    tails.insert(tails.end(), there.begin(), there.end());
    tails.resize(tails.size() + made.count - there.size(), 0.0);
  }
  parts.push_back(made);
}

void ItemDemand::Spread::interpolate(std::size_t part, const std::vector<double>& weights,
                                     std::vector<double>& sum) const {
  const auto& [from, count, known] = parts[part];
  sum.assign(count, 0.0);
  const double* there = tails.data() + from;
  for (const double weight : weights) {
    for (std::size_t n = 0; n < count; ++n) sum[n] += weight * there[n];
    there += count;
  }
}

std::vector<double> ItemDemand::tails_of(std::size_t part, double days) const {
  const std::size_t users = sources_.users.size();
  const auto& of_unit = part < users ? *sources_.users[part] : firsts_[part - users];
  return replacement_tails(of_unit.life, std::min(days, needed_days(of_unit)), *fresh_,
                           of_unit.others);
}

double ItemDemand::needed_days(const wear::LifeOfUnit& unit) const {
  if (!unit.needed_until) return std::numeric_limits<double>::infinity();
  return clock(std::max(0, days_between(today_, *unit.needed_until)));
}

void ItemDemand::spread_over(double first, double last) {
  if (spread_ && spread_->moments.first() <= first && spread_->moments.last() >= last) return;
  spread_.emplace(Spread{Moments{first, last}, {}, {}});
  const std::size_t users = sources_.users.size();
  std::vector<std::vector<double>> at_moments;
  for (std::size_t part = 0; part < users + firsts_.size(); ++part) {
    const auto& of_unit = part < users ? *sources_.users[part] : firsts_[part - users];
    const double needed = needed_days(of_unit);
    // Where the rate of wear changes on the way, or the need ends, the tails are not smooth.
    if (of_unit.life.changes_between(first, last) || (first < needed && needed < last)) {
      spread_->parts.emplace_back();
      continue;
    }
    at_moments.clear();
    for (const double days : spread_->moments.at()) at_moments.push_back(tails_of(part, days));
    spread_->add(at_moments);
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
      mean += from_other.units() * from_other.chance(days);
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
  return over_arrivals(from, lead, [&](Date arrival) {
    return at_most_replaced(unit.life, while_needed(unit, arrival), unit.others);
  });
}

double chance_needed_by_arrival(const wear::LifeOfUnit& unit, Date from, const LeadTime& lead) {
  return over_arrivals(from, lead, [&](Date arrival) {
    return chance_of_replacement(unit.life, while_needed(unit, arrival), unit.others);
  });
}

double chance_worn_by_arrival(const wear::UnitLife& life, Date from, const LeadTime& lead) {
  return over_arrivals(from, lead, [&](Date arrival) { return life.chance_worn_by(arrival); });
}

}  // namespace sparewell::supply
