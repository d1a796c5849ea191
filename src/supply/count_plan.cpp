#include "supply/count_plan.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <tuple>

namespace sparewell::supply {
namespace {

using Shelf = std::pair<ItemCode, std::string>;  ///< an item at a place

constexpr int longest_unseen = 730;

struct Seen {
  std::set<Date> counted;
  std::set<Date> wrong;
};

std::map<Shelf, Seen> what_was_seen(const CountHistory& history, Date today) {
  std::map<Shelf, Seen> made;
  for (const auto& count : history.counts) {
    if (count.on > today) continue;
    auto& seen = made[{count.lot.item, count.place}];
    seen.counted.insert(count.on);
    if (count.counted != count.recorded) seen.wrong.insert(count.on);
  }
  for (const auto& movement : history.movements) {
    if (movement.kind != MovementKind::count_correction || movement.on > today) continue;
    auto& seen = made[{movement.lot.item, movement.place}];
    seen.counted.insert(movement.on);
    seen.wrong.insert(movement.on);
  }
  return made;
}

std::map<Shelf, CountCandidate> what_lies_where(const Clinic& clinic, const std::string& place) {
  std::map<Shelf, CountCandidate> made;
  for (const auto& level : clinic.shelf) {
    if (!place.empty() && level.place != place) continue;
    auto& candidate = made[{level.lot.item, level.place}];
    candidate.item = level.lot.item;
    candidate.place = level.place;
    candidate.pieces += level.quantity;
    candidate.levels.push_back(level);
  }
  const ClinicIndex index{clinic};
  for (auto& [shelf, candidate] : made) {
    std::ranges::sort(candidate.levels, {}, &StockLevel::lot);
    const Item* item = index.item(candidate.item);
    if (item != nullptr && item->unit_cost) candidate.value = *item->unit_cost * candidate.pieces;
  }
  return made;
}

std::map<Currency, std::int64_t> largest_values(const std::map<Shelf, CountCandidate>& candidates) {
  std::map<Currency, std::int64_t> made;
  for (const auto& [shelf, candidate] : candidates) {
    if (!candidate.value) continue;
    auto& largest = made[candidate.value->currency];
    largest = std::max(largest, candidate.value->minor);
  }
  return made;
}

void set_rank(CountCandidate& candidate, const std::map<Currency, std::int64_t>& largest,
              Date today) {
  double share = 1;
  if (candidate.value) {
    const auto most = largest.at(candidate.value->currency);
    share = most > 0 ? static_cast<double>(candidate.value->minor) / static_cast<double>(most) : 0;
  }
  const double error = (candidate.wrong_counts + 1.0) / (candidate.counts + 2.0);
  int unseen = longest_unseen;
  if (candidate.last_counted) {
    unseen = std::min(longest_unseen, days_between(*candidate.last_counted, today));
  }
  candidate.rank = (0.1 + 0.9 * share) * error * unseen;
}

}  // namespace

std::vector<CountCandidate> plan_counts(const Clinic& clinic, const CountHistory& history,
                                        Date today, const std::string& place, int most) {
  auto candidates = what_lies_where(clinic, place);
  const auto seen = what_was_seen(history, today);
  const auto largest = largest_values(candidates);
  std::vector<CountCandidate> made;
  for (auto& [shelf, candidate] : candidates) {
    if (const auto found = seen.find(shelf); found != seen.end()) {
      candidate.counts = static_cast<int>(found->second.counted.size());
      candidate.wrong_counts = static_cast<int>(found->second.wrong.size());
      candidate.last_counted = *found->second.counted.rbegin();
    }
    set_rank(candidate, largest, today);
    made.push_back(std::move(candidate));
  }
  // Alike ones stay by item and place, the order of the map.
  std::ranges::stable_sort(made, std::greater{}, &CountCandidate::rank);
  if (most > 0 && made.size() > static_cast<std::size_t>(most)) {
    made.resize(static_cast<std::size_t>(most));
  }
  return made;
}

}  // namespace sparewell::supply
