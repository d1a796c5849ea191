#include "desk/stock_list.hpp"

#include <algorithm>
#include <tuple>

namespace sparewell::desk {
namespace {

auto shelf_order(const StockLevel& level) {
  return std::tie(level.place, level.lot.item, level.lot.lot, level.lot.use_by);
}

}  // namespace

std::vector<StockLevel> stock_levels(const Clinic& clinic, const StockQuestion& question,
                                     Date today) {
  std::vector<StockLevel> made;
  for (const auto& level : clinic.shelf) {
    const bool at_place = question.place.empty() || level.place == question.place;
    const bool of_item = question.item.empty() || level.lot.item.text == question.item;
    const bool in_time =
        !question.expiring ||
        (level.lot.use_by && *level.lot.use_by <= today + days{*question.expiring});
    if (at_place && of_item && in_time) made.push_back(level);
  }
  std::ranges::sort(made, {}, shelf_order);
  if (question.expiring) {
    std::ranges::stable_sort(made, {}, [](const StockLevel& level) { return level.lot.use_by; });
  }
  return made;
}

std::vector<StockLevel> transits(const Clinic& clinic) {
  std::vector<StockLevel> made;
  for (const auto& level : clinic.shelf) {
    if (sort_of_place(clinic.places, level.place) == PlaceSort::in_transit) made.push_back(level);
  }
  std::ranges::sort(made, {}, shelf_order);
  return made;
}

std::vector<Place> all_places(const Clinic& clinic) {
  auto made = clinic.places;
  const auto add = [&](const std::string& name) {
    if (std::ranges::find(made, name, &Place::name) == made.end()) {
      made.push_back({name, sort_of_place({}, name), {}});
    }
  };
  add(clinic.settings.main_place);
  for (const auto& level : clinic.shelf) add(level.place);
  for (const auto& patient : clinic.patients) {
    if (!patient.place.empty()) add(patient.place);
  }
  std::ranges::sort(made, {}, [](const Place& place) { return std::tie(place.sort, place.name); });
  return made;
}

}  // namespace sparewell::desk
