#include "wear/backtest.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
#include "clinic/say.hpp"
#include "wear/backtest_peers.hpp"
#include "wear/backtest_tally.hpp"
#include "wear/clinic_fit.hpp"

namespace sparewell::wear {
namespace {

/// One unit in use on a day from which is forecast, and what became of it.
struct Case {
  const Unit* unit = nullptr;
  const Item* item = nullptr;
  std::size_t person = 0;
  Outcome outcome;
};

/// What happened, as known on the day of the backtest.
struct Truth {
  Clinic clinic;
  ClinicIndex index{clinic};
  Date today;
  std::unordered_map<PatientRef, std::size_t> persons;

  Truth(const Clinic& all, Date day) : clinic{as_of(all, day)}, today{day} {
    for (const Unit& unit : clinic.units) persons.emplace(unit.patient, persons.size());
  }
};

/// In the order of the units, which is that of lives_of_units_in_use on the day.
std::vector<Case> cases_at(const Truth& truth, Date origin) {
  std::vector<Case> cases;
  for (const Unit& unit : truth.clinic.units) {
    const Item* item = truth.index.item(unit.item);
    if (item == nullptr || !unit.in_use_on(origin)) continue;
    const double lasted = days_between(origin, unit.ended_on.value_or(truth.today));
    const bool worn_out = unit.ended_on && unit.end_reason && is_wear(*unit.end_reason);
    cases.push_back({&unit, item, truth.persons.at(unit.patient), {lasted, worn_out}});
  }
  return cases;
}

std::map<Kind, StepCurve> observation_curves(const std::vector<std::vector<Case>>& cases) {
  std::map<Kind, std::vector<Outcome>> outcomes;
  for (const auto& at_origin : cases) {
    for (const Case& one : at_origin) outcomes[one.item->kind].push_back(one.outcome);
  }
  std::map<Kind, StepCurve> curves;
  for (const auto& [kind, of_kind] : outcomes) curves[kind] = observation_curve(of_kind);
  return curves;
}

class Replay {
 public:
  Replay(const Truth& truth, const PriorTable& priors, int horizon,
         std::map<Kind, StepCurve> observed)
      : truth_{truth}, priors_{priors}, horizon_{horizon}, observed_{std::move(observed)} {}

  void add(Date origin, const std::vector<Case>& cases) {
    const Clinic known = known_at(truth_.clinic, origin);
    const auto lives = lives_of_units_in_use(known, fit_clinic(known, priors_, origin), origin);
    if (lives.size() != cases.size()) throw std::logic_error{"A unit in use has no forecast."};
    const CalendarRule calendar{known, priors_, origin};
    const ClinicWeibull weibull{known, priors_, origin};
    std::vector<ScoredUnit> scored(cases.size());
    in_parallel(cases.size(), [&](std::size_t i) {
      const auto& [unit, item, person, outcome] = cases[i];
      const UnitLife& life = lives[i].life;
      const auto end = origin + days{static_cast<int>(outcome.days)};
      scored[i] = {outcome, Placement{life.chance_worn_by(end), outcome.worn_out, person},
                   score_forecasts(
                       daily_chances(life, horizon_), calendar.chances(*unit, *item, horizon_),
                       weibull.chances(*unit, *item, horizon_), outcome, observed_.at(item->kind))};
    });
    for (std::size_t i = 0; i < cases.size(); ++i) {
      kinds_[cases[i].item->kind].add(scored[i]);
      all_.add(scored[i]);
    }
  }

  [[nodiscard]] Backtest result(std::vector<Date> origins) const {
    Backtest made{truth_.today, horizon_, std::move(origins), {}, all_.scores()};
    for (const auto& [kind, tally] : kinds_) made.kinds.push_back({kind, tally.scores()});
    return made;
  }

 private:
  const Truth& truth_;
  const PriorTable& priors_;
  int horizon_;
  std::map<Kind, StepCurve> observed_;
  std::map<Kind, BacktestTally> kinds_;
  BacktestTally all_;
};

}  // namespace

std::optional<double> skill(double ours, double peer) {
  if (!(peer > 0)) return std::nullopt;
  return 1 - ours / peer;
}

std::vector<Date> backtest_origins(const Clinic& clinic, Date today, const BacktestPlan& plan) {
  if (plan.origins < 1 || plan.horizon_days < 1) {
    throw std::invalid_argument{"A backtest needs one origin and a horizon of one day at least."};
  }
  const auto issued = std::ranges::min_element(clinic.units, {}, &Unit::issued_on);
  if (issued == clinic.units.end()) return {};
  const Date first = issued->issued_on + days{2 * days_between(issued->issued_on, today) / 5};
  const Date last = today - days{plan.horizon_days};
  if (first > last || issued->issued_on >= last) return {};
  std::vector<Date> origins;
  const int span = days_between(first, last);
  for (int i = 0; i + 1 < plan.origins; ++i) {
    origins.push_back(first + days{span * i / (plan.origins - 1)});
  }
  origins.push_back(last);
  origins.erase(std::unique(origins.begin(), origins.end()), origins.end());
  return origins;
}

Clinic known_at(Clinic clinic, Date origin) {
  Clinic known = as_of(std::move(clinic), origin);
  std::erase_if(known.usage, [&](const Usage& usage) { return usage.from_date > origin; });
  return known;
}

Expected<Backtest> run_backtest(const Clinic& clinic, const PriorTable& priors, Date today,
                                const BacktestPlan& plan, const BacktestGoesOn& goes_on) {
  const Truth truth{clinic, today};
  const auto origins = backtest_origins(truth.clinic, today, plan);
  std::vector<std::vector<Case>> cases;
  cases.reserve(origins.size());
  for (const Date origin : origins) cases.push_back(cases_at(truth, origin));
  if (std::ranges::all_of(cases, &std::vector<Case>::empty)) {
    return refuse(say(
        "There is too little history before {} to test forecasts of {} days: the records must "
        "reach back {} days at least, with parts in use {} days ago; choose a shorter horizon, "
        "or try again later.",
        iso_text(today), plan.horizon_days, (5 * plan.horizon_days + 2) / 3, plan.horizon_days));
  }
  Replay replay{truth, priors, plan.horizon_days, observation_curves(cases)};
  for (std::size_t i = 0; i < origins.size(); ++i) {
    if (goes_on && !goes_on(static_cast<int>(i), static_cast<int>(origins.size()))) {
      return refuse(say("The test of the forecasts was stopped before its end."));
    }
    replay.add(origins[i], cases[i]);
  }
  return replay.result(origins);
}

}  // namespace sparewell::wear
