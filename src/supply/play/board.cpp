#include "supply/play/board.hpp"

#include <algorithm>
#include <map>

#include "supply/play/draws.hpp"

namespace sparewell::supply::play {
namespace {

constexpr std::uint64_t opening_draw = 0xffffffffU;  // no order day has this number
/// A supplier is equally early or late for so many days (our choice): longer than deviations are.
constexpr int spell_days = 28;

std::vector<Date> order_days_in(const Period& period, const OrderDays& order_days) {
  std::vector<Date> made;
  if (is_order_day(order_days, period.start)) made.push_back(period.start);
  for (Date day = next_order_day(order_days, period.start); day <= period.end;
       day = next_order_day(order_days, day)) {
    made.push_back(day);
  }
  return made;
}

void set_mean_costs(std::vector<BoardItem>& items) {
  struct Sum {
    double money = 0;
    double pieces = 0;
  };
  // Something for every item, so that there is a mean where nothing was used.
  constexpr double hardly_any = 1e-9;
  std::map<Currency, Sum> sums;
  for (const BoardItem& item : items) {
    Sum& sum = sums[item.item->unit_cost->currency];
    const double pieces = item.use.per_day + hardly_any;
    sum.money += pieces * static_cast<double>(item.item->unit_cost->minor);
    sum.pieces += pieces;
  }
  for (BoardItem& item : items) {
    const Sum& sum = sums.at(item.item->unit_cost->currency);
    item.mean_cost = std::max(1.0, sum.money / sum.pieces);
  }
}

int drawn_days(const LeadTime& lead, double chance) {
  double sum = 0;
  for (const LeadTime::Day& day : lead.distribution()) {
    sum += day.chance;
    if (chance < sum) return day.days;
  }
  return lead.distribution().back().days;
}

}  // namespace

bool can_be_played(const Item& item) {
  return item.stocked && item.unit_cost.has_value();
}

Board::Board(const Clinic& of, const Period& over, const std::function<double(const Item&)>& uses)
    : clinic{of}, period{over} {
  const ClinicIndex index{clinic};
  const LeadTimes leads{clinic};
  std::vector<const Item*> sorted;
  for (const Item& item : clinic.items) {
    if (can_be_played(item)) sorted.push_back(&item);
  }
  std::ranges::sort(sorted, {}, [](const Item* item) { return item->code; });
  for (const Item* item : sorted) {
    const Supplier* supplier = index.supplier(item->supplier);
    const OrderDays order_days = supplier == nullptr ? OrderDays{} : supplier->order_days;
    LeadTime lead = leads.of(*item);
    const MeanUse use{uses(*item), lead.mean(), review_days(order_days)};
    positions.emplace(item->code, items.size());
    items.push_back({item, supplier, std::move(lead), order_days_in(period, order_days), use, 0});
  }
  set_mean_costs(items);
}

ItemWorld Board::world(std::size_t item, std::vector<Request> requests, std::uint64_t seed) const {
  const BoardItem& of = items[item];
  const std::uint64_t supplier = number_of(of.item->supplier.text, number_of("supplier"));
  ItemWorld made{of.item,    period.start,        period.counted_from,
                 period.end, std::move(requests), of.order_days,
                 {}};
  Date arrival = period.start;
  for (const Date day : of.order_days) {
    const auto spell = static_cast<std::uint64_t>(day.time_since_epoch().count() / spell_days);
    const int drawn = drawn_days(of.lead, uniform_at(seed, supplier, spell));
    arrival = std::max(arrival, day + days{drawn});  // after the orders placed before it
    made.lead_days.push_back(days_between(day, arrival));
  }
  return made;
}

std::vector<Levels> Board::levels(std::size_t item, const std::vector<double>& services,
                                  const CycleDemand& demand, int days) const {
  std::vector<Levels> made;
  for (const double service : services) made.push_back(up_to(demand.until.least_covering(service)));
  const BoardItem& of = items[item];
  const auto cost = static_cast<double>(of.item->unit_cost->minor);
  for (const double service : services) {
    const double leftover = by_cost_leftover(service, cost, of.mean_cost, days);
    made.push_back(up_to(least_cost_target(demand, leftover)));
  }
  return made;
}

double Board::opening_share(std::size_t item, std::uint64_t seed) const {
  return uniform_at(seed, number_of(items[item].item->code.text), opening_draw);
}

Requests handed_out(const Clinic& clinic, const Board& board) {
  std::vector<std::map<std::pair<Date, PatientRef>, int>> pieces(board.items.size());
  for (const Unit& unit : clinic.units) {
    const auto found = board.positions.find(unit.item);
    if (found == board.positions.end()) continue;
    if (unit.issued_on < board.period.start || unit.issued_on > board.period.end) continue;
    ++pieces[found->second][{unit.issued_on, unit.patient}];
  }
  Requests made(board.items.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    for (const auto& [at, count] : pieces[i]) made[i].push_back({at.first, count});
  }
  return made;
}

}  // namespace sparewell::supply::play
