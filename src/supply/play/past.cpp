#include "supply/play/past.hpp"

#include <algorithm>
#include <map>

#include "clinic/in_parallel.hpp"
#include "supply/item_case.hpp"
#include "wear/backtest.hpp"
#include "wear/clinic_fit.hpp"

namespace sparewell::supply::play {
namespace {

/// Days worked on between two questions whether to go on.
constexpr std::size_t days_at_once = 4;

/// An item that is ordered on a day, and the how manieth of its order days that is.
struct Ordered {
  std::size_t item = 0;
  std::size_t order_day = 0;
};
using OrderCalendar = std::map<Date, std::vector<Ordered>>;

OrderCalendar calendar_of(const Board& board) {
  OrderCalendar made;
  for (std::size_t i = 0; i < board.items.size(); ++i) {
    const auto& order_days = board.items[i].order_days;
    for (std::size_t d = 0; d < order_days.size(); ++d) made[order_days[d]].push_back({i, d});
  }
  return made;
}

/// What forecasts of demand are made from; copied for every day, so the rest is left out.
Clinic forecast_records(Clinic clinic) {
  clinic.claim_lines.clear();
  clinic.invoice_lines.clear();
  clinic.sensitivities.clear();
  clinic.shelf.clear();
  clinic.reservations.clear();
  return clinic;
}

/// Averaging over the laws that are possible takes most of the time of a forecast and moves the
/// money in stock by less than one percent (tried on the sample clinic), so it is left out here.
wear::ClinicLife best_laws_alone(wear::ClinicLife fitted) {
  for (auto& [kind, life] : fitted.kinds) life.draws = {};
  return fitted;
}

void find_targets(const Clinic& known, const wear::ClinicLife& fitted, const Board& board, Date day,
                  const std::vector<Ordered>& ordered, const std::vector<double>& services,
                  Targets& targets) {
  const auto lives = wear::lives_of_units_in_use(known, fitted, day);
  const ClinicDemand demand{known, lives, day};
  const LeadTimes leads{known};
  const StockBook book{known};
  const OrderPolicy policy = policy_of(known.settings);
  for (const Ordered& each : ordered) {
    const BoardItem& item = board.items[each.item];
    const ItemCase given =
        item_case(known, *item.item, item.supplier, demand, book, leads.of(*item.item), policy);
    ItemDemand of_item = demand_of(given);
    const CycleDemand cycle{of_item.until_arrival(day, given.lead),
                            of_item.until_arrival(given.next_order_day, given.lead)};
    const auto levels =
        board.levels(each.item, services, cycle, days_between(day, given.next_order_day));
    for (std::size_t c = 0; c < levels.size(); ++c) {
      targets[each.item][c][each.order_day] = levels[c];
    }
  }
}

}  // namespace

Targets empty_targets(const Board& board, std::size_t services) {
  Targets made;
  for (const BoardItem& item : board.items) {
    made.emplace_back(2 * services, std::vector<Levels>(item.order_days.size()));
  }
  return made;
}

std::optional<Scenario> past_scenario(const Clinic& clinic, const wear::PriorTable& priors,
                                      const Board& board, const std::vector<double>& services,
                                      std::uint64_t seed, const GoesOn& goes_on) {
  Scenario made{handed_out(clinic, board), empty_targets(board, services.size()), seed};
  const Clinic records = forecast_records(clinic);
  const OrderCalendar calendar = calendar_of(board);
  const std::vector<OrderCalendar::value_type> in_order{calendar.begin(), calendar.end()};
  std::optional<wear::ClinicLife> fitted;
  Date fitted_on;
  for (std::size_t from = 0; from < in_order.size();) {
    if (goes_on && !goes_on(static_cast<double>(from) / static_cast<double>(in_order.size()))) {
      return std::nullopt;
    }
    const Date first = in_order[from].first;
    if (!fitted || first >= fitted_on + days{days_between_fits}) {
      fitted = best_laws_alone(wear::fit_clinic(wear::known_at(records, first), priors, first));
      fitted_on = first;
    }
    std::size_t count = 0;
    while (count < days_at_once && from + count < in_order.size() &&
           in_order[from + count].first < fitted_on + days{days_between_fits}) {
      ++count;
    }
    in_parallel(count, [&](std::size_t i) {
      const auto& [day, ordered] = in_order[from + i];
      find_targets(wear::known_at(records, day), *fitted, board, day, ordered, services,
                   made.targets);
    });
    from += count;
  }
  return made;
}

}  // namespace sparewell::supply::play
