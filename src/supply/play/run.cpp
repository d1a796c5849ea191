#include "supply/play/run.hpp"

#include <algorithm>
#include <map>

#include "clinic/in_parallel.hpp"
#include "supply/policy.hpp"

namespace sparewell::supply::play {
namespace {

/// Goods ordered from a supplier on a day, in the smallest unit of the currency.
using GoodsByOrder = std::map<std::pair<Date, const Supplier*>, std::int64_t>;

std::vector<Levels> levels_of(const BoardItem& item, const std::vector<std::vector<Levels>>& ours,
                              const Setting& setting, const std::vector<double>& services) {
  if (setting.policy == Policy::min_max) {
    return {min_max_levels(*item.item, item.use, setting.step, setting.rounding)};
  }
  if (setting.policy == Policy::when_empty) return {when_empty_levels(item.use)};
  const auto at = std::ranges::find(services, setting.step) - services.begin();
  const std::size_t before = setting.policy == Policy::by_cost ? services.size() : 0;
  return ours[before + static_cast<std::size_t>(at)];
}

std::int64_t freight_of(const GoodsByOrder& orders, const Currency& currency) {
  std::int64_t sum = 0;
  for (const auto& [order, goods] : orders) {
    const Supplier* supplier = order.second;
    if (supplier == nullptr || !supplier->freight) continue;
    if (supplier->freight->currency != currency) continue;
    const auto& free_from = supplier->free_freight_from;
    if (!free_from || goods < free_from->minor) sum += supplier->freight->minor;
  }
  return sum;
}

Run play_setting(const Board& board, const Group& group, const Scenario& scenario,
                 const std::vector<ItemWorld>& worlds, const Setting& setting,
                 const std::vector<double>& services) {
  Run run;
  GoodsByOrder goods;
  std::vector<PlacedOrder> placed;
  for (std::size_t i = 0; i < group.items.size(); ++i) {
    const BoardItem& item = board.items[group.items[i]];
    if (item.order_days.empty()) {
      run.items.emplace_back();
      continue;
    }
    const auto levels = levels_of(item, scenario.targets[group.items[i]], setting, services);
    ItemRule rule{levels, 0, std::nullopt};
    rule.opening = steady_stock(*item.item, levels.front(),
                                board.opening_share(group.items[i], scenario.seed));
    if (setting.policy == Policy::sparewell || setting.policy == Policy::by_cost) {
      rule.counts_lasting = static_cast<int>(item.use.review_days) + item.lead.mean_days();
    }
    placed.clear();
    run.items.push_back(play_item(worlds[i], rule, &placed));
    for (const PlacedOrder& order : placed) {
      const auto cost = unit_cost_at(*item.item, order.quantity).value_or(*item.item->unit_cost);
      goods[{order.day, item.supplier}] += cost.minor * order.quantity;
    }
  }
  run.orders = static_cast<int>(goods.size());
  run.freight = freight_of(goods, group.currency);
  return run;
}

double weight_at(const std::vector<double>& weights, std::size_t i) {
  return weights.empty() ? 1 : weights[i];
}

double cost_of(const Board& board, const Group& group, std::size_t i) {
  return static_cast<double>(board.items[group.items[i]].item->unit_cost->minor);
}

}  // namespace

std::vector<Group> groups_of(const Board& board) {
  std::map<Currency, std::vector<std::size_t>> by_currency;
  for (std::size_t i = 0; i < board.items.size(); ++i) {
    by_currency[board.items[i].item->unit_cost->currency].push_back(i);
  }
  std::vector<Group> made;
  for (auto& [currency, items] : by_currency) made.push_back({currency, std::move(items)});
  return made;
}

std::vector<Run> play_all(const Board& board, const Group& group, const Scenario& scenario,
                          const std::vector<Setting>& settings,
                          const std::vector<double>& services) {
  std::vector<ItemWorld> worlds;
  worlds.reserve(group.items.size());
  for (const std::size_t item : group.items) {
    worlds.push_back(board.world(item, scenario.requests[item], scenario.seed));
  }
  std::vector<Run> runs(settings.size());
  in_parallel(settings.size(), [&](std::size_t i) {
    runs[i] = play_setting(board, group, scenario, worlds, settings[i], services);
  });
  return runs;
}

double Totals::fill_rate() const {
  return pieces > 0 ? static_cast<double>(served_at_once) / static_cast<double>(pieces) : 1;
}

double Totals::mean_wait() const {
  return kept_waiting > 0 ? static_cast<double>(waited_days) / kept_waiting : 0;
}

Totals totals_of(const Board& board, const Group& group, const Setting& setting,
                 const std::vector<const Run*>& runs) {
  Totals made;
  made.setting = setting;
  made.worlds = static_cast<int>(runs.size());
  for (const Run* run : runs) {
    made.orders += run->orders;
    made.freight += run->freight;
    for (std::size_t i = 0; i < run->items.size(); ++i) {
      const ItemCounts& item = run->items[i];
      made.pieces += item.pieces;
      made.served_at_once += item.served_at_once;
      made.patients += item.requests;
      made.kept_waiting += item.kept_waiting;
      made.waited_days += item.waited_days;
      made.longest_wait = std::max(made.longest_wait, item.longest_wait);
      made.rush += item.rush;
      made.expired += item.expired * board.items[group.items[i]].item->unit_cost->minor;
    }
  }
  made.stock = outcome_of(board, group, runs, {}).stock;
  return made;
}

Outcome outcome_of(const Board& board, const Group& group, const std::vector<const Run*>& runs,
                   const Weights& weights) {
  double pieces = 0;
  double served = 0;
  double stock = 0;
  double worlds = 0;
  for (std::size_t w = 0; w < runs.size(); ++w) {
    const double world = weight_at(weights.worlds, w);
    worlds += world;
    for (std::size_t i = 0; i < runs[w]->items.size(); ++i) {
      const ItemCounts& item = runs[w]->items[i];
      const double weight = world * weight_at(weights.items, i);
      pieces += weight * item.pieces;
      served += weight * item.served_at_once;
      if (item.days == 0) continue;
      stock += weight * cost_of(board, group, i) * static_cast<double>(item.stock_days) / item.days;
    }
  }
  return {pieces > 0 ? served / pieces : 1, worlds > 0 ? stock / worlds : 0};
}

}  // namespace sparewell::supply::play
