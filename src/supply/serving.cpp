#include "supply/serving.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "supply/receiving.hpp"

namespace sparewell::supply {
namespace {

struct OnOrder {
  Date expected_on;
  int pieces = 0;
};

/// What is left to give of one item.
struct Supply {
  std::vector<StockLevel> shelf;  ///< in stores, the lot that expires first before others
  int in_transit = 0;
  std::vector<OnOrder> on_order;  ///< the soonest first
};

using Supplies = std::map<ItemCode, Supply>;

Supplies supplies_of(const Clinic& clinic, const std::set<ItemCode>& booked, Date today) {
  Supplies made;
  for (const StockLevel& level : clinic.shelf) {
    if (level.quantity <= 0 || !booked.contains(level.lot.item)) continue;
    const auto sort = sort_of_place(clinic.places, level.place);
    if (sort == PlaceSort::store) made[level.lot.item].shelf.push_back(level);
    if (sort == PlaceSort::in_transit) made[level.lot.item].in_transit += level.quantity;
  }
  for (const ExpectedLine& line : still_to_come(clinic, {}, today)) {
    if (!booked.contains(line.line.item)) continue;
    made[line.line.item].on_order.push_back({line.expected_on, line.line.outstanding()});
  }
  for (auto& [item, supply] : made) {
    std::ranges::stable_sort(supply.shelf, {}, [](const StockLevel& level) {
      return std::tuple{level.lot.use_by.value_or(Date::max()), level.lot.lot, level.place};
    });
    std::ranges::stable_sort(supply.on_order, {}, &OnOrder::expected_on);
  }
  return made;
}

int take(int& from, int wanted) {
  const int taken = std::min(from, wanted);
  from -= taken;
  return taken;
}

void serve_from_shelf(Serving& serving, Supply& supply, Date day, bool at_its_place) {
  for (StockLevel& level : supply.shelf) {
    if ((level.place == serving.booking->place) != at_its_place) continue;
    if (level.lot.use_by && *level.lot.use_by < day) continue;
    const int taken = take(level.quantity, serving.missing);
    serving.missing -= taken;
    (at_its_place ? serving.here : serving.elsewhere) += taken;
    if (taken > 0 && !at_its_place && serving.other_place.empty()) {
      serving.other_place = level.place;
    }
  }
}

void serve_from_orders(Serving& serving, Supply& supply, Date day) {
  serving.coming += take(supply.in_transit, serving.missing);
  serving.missing -= serving.coming;
  for (OnOrder& order : supply.on_order) {
    const int taken = take(order.pieces, serving.missing);
    if (taken == 0) continue;
    const bool late = serving.booking->needed_on && order.expected_on > day;
    (late ? serving.late : serving.coming) += taken;
    serving.missing -= taken;
    serving.expected_on = order.expected_on;
  }
}

}  // namespace

std::vector<Serving> servings(const Clinic& clinic, Date today) {
  std::vector<Serving> made;
  std::set<ItemCode> booked;
  for (const Reservation& booking : clinic.reservations) {
    if (booking.quantity <= 0) continue;
    made.push_back({&booking, 0, 0, 0, 0, booking.quantity, std::nullopt, {}});
    booked.insert(booking.item);
  }
  if (made.empty()) return made;
  std::ranges::sort(made, {}, [](const Serving& serving) {
    const Reservation& booking = *serving.booking;
    return std::tie(booking.needed_on, booking.patient, booking.item, booking.place);
  });
  auto supplies = supplies_of(clinic, booked, today);
  const auto day_of = [&](const Serving& serving) {
    return std::max(today, serving.booking->needed_on.value_or(today));
  };
  for (const bool at_its_place : {true, false}) {
    for (Serving& each : made) {
      serve_from_shelf(each, supplies[each.booking->item], day_of(each), at_its_place);
    }
  }
  for (Serving& each : made) serve_from_orders(each, supplies[each.booking->item], day_of(each));
  return made;
}

}  // namespace sparewell::supply
