#include "supply/play/simulate.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>

#include "clinic/in_parallel.hpp"
#include "clinic/say.hpp"
#include "wear/clinic_fit.hpp"

namespace sparewell::supply::play {
namespace {

constexpr double days_in_month = 365.25 / 12;
constexpr int use_days = 365;            ///< over which fixed levels look back
constexpr int least_history_days = 182;  ///< before the past is played
constexpr std::uint64_t past_seed = 1;
/// Part of the work that is the past, roughly.
constexpr double past_part = 0.6;
/// Futures drawn between two questions whether to go on.
constexpr std::size_t futures_at_once = 4;

std::optional<Date> first_issue(const Clinic& clinic) {
  const auto first = std::ranges::min_element(clinic.units, {}, &Unit::issued_on);
  return first == clinic.units.end() ? std::nullopt : std::optional{first->issued_on};
}

Period period_of(Date start, const SimulationPlan& plan) {
  const Date counted = start + days{plan.warm_up_days};
  return {start, counted, counted + days{std::lround(plan.months * days_in_month)}};
}

/// Pieces a day handed out in the year up to `until`; with `replacing`, only to patients who had
/// been handed out the item before.
std::map<ItemCode, double> use_before(const Clinic& clinic, Date until, bool replacing) {
  std::map<ItemCode, double> made;
  std::map<std::pair<PatientRef, ItemCode>, Date> first;
  for (const Unit& unit : clinic.units) {
    const auto at = first.try_emplace({unit.patient, unit.item}, unit.issued_on).first;
    at->second = std::min(at->second, unit.issued_on);
  }
  const auto begin = first_issue(clinic);
  if (!begin) return made;
  const int seen = std::clamp(days_between(*begin, until), 1, use_days);
  for (const Unit& unit : clinic.units) {
    if (unit.issued_on > until || unit.issued_on <= until - days{seen}) continue;
    if (replacing && first.at({unit.patient, unit.item}) == unit.issued_on) continue;
    made[unit.item] += 1.0 / seen;
  }
  return made;
}

Board board_of(const Clinic& clinic, const Period& period, const std::map<ItemCode, double>& uses) {
  return {clinic, period, [&](const Item& item) {
            const auto found = uses.find(item.code);
            return found == uses.end() ? 0.0 : found->second;
          }};
}

std::vector<Played> play(const Board& board, const std::vector<Scenario>& worlds,
                         const std::vector<double>& services, double present) {
  const auto settings = settings_to_play(services);
  std::vector<Played> made;
  for (const Group& group : groups_of(board)) {
    std::vector<std::vector<Run>> by_world(worlds.size());
    in_parallel(worlds.size(), [&](std::size_t w) {
      by_world[w] = play_all(board, group, worlds[w], settings, services);
    });
    RunsBySetting runs(settings.size());
    for (std::size_t s = 0; s < settings.size(); ++s) {
      for (const auto& world : by_world) runs[s].push_back(&world[s]);
    }
    Played played;
    played.currency = group.currency;
    played.items = static_cast<int>(group.items.size());
    played.worlds = static_cast<int>(worlds.size());
    played.period = board.period;
    for (std::size_t s = 0; s < settings.size(); ++s) {
      played.runs.push_back(totals_of(board, group, settings[s], runs[s]));
    }
    played.saving =
        saving_against_min_max(board, group, settings, runs, present, Policy::sparewell);
    played.saving_by_cost =
        saving_against_min_max(board, group, settings, runs, present, Policy::by_cost);
    made.push_back(std::move(played));
  }
  std::ranges::stable_sort(made, std::ranges::greater{},
                           [](const Played& each) { return each.runs.front().pieces; });
  return made;
}

void check(const SimulationPlan& plan) {
  if (plan.months < 1 || plan.futures < 0 || plan.warm_up_days < 0 ||
      !(plan.service > 0 && plan.service < 1)) {
    throw std::invalid_argument{
        "A play needs a month or more, no fewer than no futures, and a service target between 0 "
        "and 1."};
  }
}

std::string too_short(Date start, Date today, int months) {
  return say(
      "The records do not reach back far enough before {} to play the last {} months: they must "
      "begin by {}; choose fewer months, or try again later.",
      iso_text(today), months, iso_text(start - days{least_history_days}));
}

bool stopped(const GoesOn& goes_on, double done) {
  return goes_on && !goes_on(done);
}

std::optional<std::vector<Scenario>> drawn_futures(const Futures& futures, int count,
                                                   const std::vector<double>& services,
                                                   const GoesOn& goes_on) {
  std::vector<Scenario> made(static_cast<std::size_t>(count));
  for (std::size_t from = 0; from < made.size(); from += futures_at_once) {
    const double part = static_cast<double>(from) / static_cast<double>(made.size());
    if (stopped(goes_on, past_part + (1 - past_part) * part)) return std::nullopt;
    in_parallel(std::min(futures_at_once, made.size() - from),
                [&](std::size_t i) { made[from + i] = futures.draw(from + i + 1, services); });
  }
  return made;
}

}  // namespace

const Totals& Played::ours(double service) const {
  return *std::ranges::find(runs, Setting{Policy::sparewell, service, Rounding::nearest},
                            &Totals::setting);
}

Expected<Simulation> simulate(const Clinic& all, const wear::PriorTable& priors, Date today,
                              const SimulationPlan& plan, const GoesOn& goes_on) {
  check(plan);
  const auto stop = refuse(say("The play was stopped before its end."));
  const Clinic clinic = as_of(all, today);
  Simulation made{today, plan, {}, "", {}, 0, 0};
  for (const Item& item : clinic.items) {
    made.patient_ordered += item.stocked ? 0 : 1;
    made.without_cost += item.stocked && !can_be_played(item) ? 1 : 0;
  }
  const auto first = first_issue(clinic);
  if (!first || !std::ranges::any_of(clinic.items, can_be_played)) {
    return refuse(say(
        "There is nothing to play: that needs parts handed out and stocked items with a cost in "
        "the catalogue; import them first."));
  }
  const auto services = service_targets(plan.service);

  const Date start = today - (period_of(today, plan).end - today);
  if (*first > start - days{least_history_days}) {
    made.past_refused = too_short(start, today, plan.months);
  } else {
    const Period period = period_of(start, plan);
    const Board board = board_of(clinic, period, use_before(clinic, period.counted_from, false));
    auto past = past_scenario(clinic, priors, board, services, past_seed,
                              [&](double done) { return !stopped(goes_on, past_part * done); });
    if (!past) return stop;
    std::vector<Scenario> worlds;
    worlds.push_back(std::move(*past));
    made.past = play(board, worlds, services, plan.service);
  }

  if (plan.futures > 0) {
    if (stopped(goes_on, past_part)) return stop;
    const Board board = board_of(clinic, period_of(today, plan), use_before(clinic, today, true));
    const auto fitted = wear::fit_clinic(clinic, priors, today);
    const auto lives = wear::lives_of_units_in_use(clinic, fitted, today);
    const auto worlds =
        drawn_futures(Futures{clinic, lives, board}, plan.futures, services, goes_on);
    if (!worlds) return stop;
    made.futures = play(board, *worlds, services, plan.service);
  }
  return made;
}

}  // namespace sparewell::supply::play
