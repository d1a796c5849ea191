#include "clinic/place.hpp"

#include <algorithm>

#include "clinic/stock.hpp"

namespace sparewell {

template <>
std::span<const std::string_view> words<PlaceSort>() {
  static constexpr std::array<std::string_view, 5> names{"store", "quarantine", "in transit",
                                                         "on loan", "at supplier"};
  return names;
}

PlaceSort sort_of_place(std::span<const Place> places, std::string_view name) {
  const auto found = std::ranges::find(places, name, &Place::name);
  if (found != places.end()) return found->sort;
  return is_quarantine(name) ? PlaceSort::quarantine : PlaceSort::store;
}

}  // namespace sparewell
