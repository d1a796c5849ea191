#include "clinic/place.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "clinic/stock.hpp"

namespace sparewell {

template <>
std::span<const std::string_view> words<PlaceSort>() {
  static constexpr std::array<std::string_view, 5> names{to_say("store"), to_say("quarantine"),
                                                         to_say("in transit"), to_say("on loan"),
                                                         to_say("at supplier")};
  return names;
}

PlaceSort sort_of_place(std::span<const Place> places, std::string_view name) {
  const auto found = std::ranges::find(places, name, &Place::name);
  if (found != places.end()) return found->sort;
  return is_quarantine(name) ? PlaceSort::quarantine : PlaceSort::store;
}

Place transit_place(const std::string& to) {
  return {fmt::format("in transit to {}", to), PlaceSort::in_transit, to};
}

Place loan_place() {
  return {"on loan", PlaceSort::on_loan, ""};
}

Place supplier_place(const std::string& supplier) {
  return {fmt::format("at supplier {}", supplier), PlaceSort::at_supplier, supplier};
}

std::string shown_place(std::string_view name) {
  if (name == loan_place().name) return said("on loan");
  const auto on_the_way = transit_place("").name;
  if (name.starts_with(on_the_way)) {
    return say("in transit to {}", name.substr(on_the_way.size()));
  }
  const auto supplier = supplier_place("").name;
  if (name.starts_with(supplier)) return say("at supplier {}", name.substr(supplier.size()));
  return std::string{name};
}

bool is_name_of_program(std::string_view name) {
  return name == loan_place().name || name.starts_with(transit_place("").name) ||
         name.starts_with(supplier_place("").name);
}

bool is_kept_by_program(const Place& place) {
  return place == transit_place(place.leads_to) || place == loan_place() ||
         place == supplier_place(place.leads_to);
}

}  // namespace sparewell
