#include "simulated/scoring.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "simulated/oracle.hpp"
#include "wear/backtest_peers.hpp"
#include "wear/scores.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::simulated {
namespace {

constexpr std::array<double, 5> scored_levels{0.1, 0.25, 0.5, 0.75, 0.9};
constexpr double farthest_days = 36525;

double days_to(const wear::UnitLife& life, double p) {
  const auto date = life.worn_out_date(p);
  return date ? days_between(life.today(), *date) : farthest_days;
}

/// Part of [before, by] that lies between the two levels.
double part_within(double before, double by, double low, double high) {
  if (!(by > before)) return low <= by && by <= high ? 1 : 0;
  return std::max(0.0, std::min(by, high) - std::max(before, low)) / (by - before);
}

double mean_pinball(const std::array<double, 5>& quantiles, double outcome) {
  double sum = 0;
  for (std::size_t i = 0; i < scored_levels.size(); ++i) {
    sum += wear::pinball_loss(scored_levels[i], quantiles[i], outcome);
  }
  return sum / static_cast<double>(scored_levels.size());
}

UnitScore score_of(const wear::UnitLife& life, Date worn_on) {
  const double outcome = days_between(life.today(), worn_on);
  std::array<double, 5> quantiles{};
  std::ranges::transform(scored_levels, quantiles.begin(),
                         [&](double p) { return days_to(life, p); });
  const auto within = [&](double low, double high) {
    return low <= outcome && outcome <= high ? 1.0 : 0.0;
  };
  const double before = life.chance_worn_by(worn_on - days{1});
  const double by = life.chance_worn_by(worn_on);
  UnitScore made;
  made.in_half = within(quantiles[1], quantiles[3]);
  made.in_80 = within(quantiles[0], quantiles[4]);
  made.in_95 = within(days_to(life, 0.025), days_to(life, 0.975));
  made.smooth_half = part_within(before, by, 0.25, 0.75);
  made.smooth_80 = part_within(before, by, 0.1, 0.9);
  made.width_80 = quantiles[4] - quantiles[0];
  made.pinball = mean_pinball(quantiles, outcome);
  return made;
}

UnitScore score_of_calendar(const wear::CalendarRule& rule, const Unit& unit, const Item& item,
                            Date today, Date worn_on) {
  const double left = std::ceil(rule.interval_days(item) - days_between(unit.issued_on, today));
  std::array<double, 5> quantiles{};
  quantiles.fill(std::max(1.0, left));
  UnitScore made;
  made.pinball = mean_pinball(quantiles, days_between(today, worn_on));
  return made;
}

std::uint64_t cluster_of(const ScoredUnit& unit, Cluster cluster) {
  return cluster == Cluster::patient ? unit.patient : unit.clinic;
}

/// Sum over clusters of the squared sum of residuals, as the square of the error of their sum.
template <class Residual>
double clustered_error(const std::vector<ScoredUnit>& units, Cluster cluster,
                       const Residual& residual) {
  std::map<std::uint64_t, double> sums;
  for (const ScoredUnit& unit : units) sums[cluster_of(unit, cluster)] += residual(unit);
  double squares = 0;
  for (const auto& [id, sum] : sums) squares += sum * sum;
  const double n = static_cast<double>(sums.size());
  return n > 1 ? std::sqrt(squares * n / (n - 1)) : HUGE_VAL;
}

}  // namespace

std::vector<ScoredUnit> score(const SimulatedClinic& made, const ClinicLaw& law,
                              const wear::PriorTable& priors, std::uint64_t seed,
                              wear::ClinicLife* fitted) {
  const wear::ClinicLife fit = wear::fit_clinic(made.clinic, priors, made.today);
  const auto ours = wear::lives_of_units_in_use(made.clinic, fit, made.today);
  const auto oracle = oracle_lives(made, law, Sight::records);
  const auto sighted = oracle_lives(made, law, Sight::truth);
  const wear::CalendarRule calendar{made.clinic, priors, made.today};
  const ClinicIndex index{made.clinic};
  std::map<PatientRef, std::uint64_t> numbers;
  std::vector<ScoredUnit> scored;
  for (std::size_t i = 0; i < made.ends.size(); ++i) {
    const Unit& unit = made.clinic.units[made.ends[i].unit];
    const Item& item = *index.item(unit.item);
    const Date worn_on = made.ends[i].worn_on;
    const std::uint64_t number = numbers.try_emplace(unit.patient, numbers.size()).first->second;
    scored.push_back({seed,
                      seed * 1'000'000 + number,
                      item.kind,
                      {score_of(ours.at(i).life, worn_on), score_of(oracle.at(i).life, worn_on),
                       score_of(sighted.at(i).life, worn_on),
                       score_of_calendar(calendar, unit, item, made.today, worn_on)}});
  }
  if (fitted) *fitted = fit;
  return scored;
}

Measured mean_of(const std::vector<ScoredUnit>& units, Peer peer, double UnitScore::*score,
                 Cluster cluster) {
  const double n = static_cast<double>(units.size());
  double sum = 0;
  for (const ScoredUnit& unit : units) sum += unit.of(peer).*score;
  const double mean = sum / n;
  const auto off = [&](const ScoredUnit& unit) { return unit.of(peer).*score - mean; };
  return {mean, clustered_error(units, cluster, off) / n};
}

Measured pinball_ratio(const std::vector<ScoredUnit>& units, Peer ours, Peer theirs,
                       Cluster cluster) {
  double above = 0;
  double below = 0;
  for (const ScoredUnit& unit : units) {
    above += unit.of(ours).pinball;
    below += unit.of(theirs).pinball;
  }
  const double ratio = above / below;
  const auto off = [&](const ScoredUnit& unit) {
    return unit.of(ours).pinball - ratio * unit.of(theirs).pinball;
  };
  return {ratio, clustered_error(units, cluster, off) / below};
}

}  // namespace sparewell::simulated
