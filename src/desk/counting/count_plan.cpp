#include "desk/counting/count_plan.hpp"

#include <algorithm>
#include <set>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

std::vector<std::string> places_with_stock(const Clinic& clinic) {
  std::set<std::string> places;
  for (const auto& level : clinic.shelf) places.insert(level.place);
  return {places.begin(), places.end()};
}

Expected<CountPlan> read_count_plan(const store::Snapshot& snapshot, Date today,
                                    const std::string& place, int most) {
  CountPlan made;
  made.clinic.settings = snapshot.settings();
  for (auto& row : snapshot.all<Item>()) made.clinic.items.push_back(std::move(row.record));
  made.clinic.shelf = snapshot.shelf();
  const auto places = places_with_stock(made.clinic);
  if (!place.empty() && std::ranges::find(places, place) == places.end()) {
    if (places.empty()) return refuse(say("Nothing lies at '{}'; stock lies at no place.", place));
    return refuse(say("Nothing lies at '{}'; stock lies at {}.", place, list_words(places)));
  }
  made.candidates = supply::plan_counts(
      made.clinic, {snapshot.counts(), snapshot.movements_of_kind(MovementKind::count_correction)},
      today, place, most);
  return made;
}

}  // namespace sparewell::desk
