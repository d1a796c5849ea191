#include "supply/restock.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
#include "supply/allocation.hpp"
#include "supply/booked.hpp"
#include "supply/order_cost.hpp"
#include "supply/picking.hpp"
#include "supply/stocked_line.hpp"

namespace sparewell::supply {
namespace {

/// What is recorded of one item where it lies.
struct Records {
  std::vector<StockLevel> shelf;
  std::vector<const Reservation*> reservations;
};

/// One place of the item that is looked at.
struct AtPlace {
  PlaceOutlook outlook;
  int movable = 0;
  Lives users;  ///< without those whose need is booked
  std::optional<ItemDemand> source;
  Pmf demand;
};

/// So many pieces from one place to another, by position.
struct Parcel {
  std::size_t from = 0;
  std::size_t to = 0;
  int quantity = 0;
};

/// Pairs what leaves with what comes: the largest of each first, so that there are few parcels.
std::vector<Parcel> parcels_of(std::vector<int> changes) {
  std::vector<Parcel> made;
  while (true) {
    const auto [least, most] = std::ranges::minmax_element(changes);
    const int quantity = std::min(-*least, *most);
    if (quantity <= 0) return made;
    made.push_back({static_cast<std::size_t>(least - changes.begin()),
                    static_cast<std::size_t>(most - changes.begin()), quantity});
    *least += quantity;
    *most -= quantity;
  }
}

class ItemRestock {
 public:
  ItemRestock(const Clinic& clinic, const PlaceDemand& demand, const RestockQuestion& question,
              const Item& item, Records records)
      : clinic_{clinic},
        demand_{demand},
        question_{question},
        item_{item},
        records_{std::move(records)} {}

  std::vector<RestockMove> moves() {
    look_at_places();
    if (std::ranges::none_of(places_, [](const AtPlace& place) { return place.movable > 0; })) {
      return {};
    }
    foresee();
    std::vector<PlaceBalance> balances;
    for (const AtPlace& place : places_) {
      balances.push_back({place.outlook.position(), place.movable, &place.demand});
    }
    changes_ = best_changes(balances, question_.least_gain);
    std::vector<RestockMove> made;
    for (const Parcel& parcel : parcels_of(changes_)) made.push_back(move_of(parcel));
    return made;
  }

 private:
  void look_at_places() {
    for (const std::string& name : demand_.branches().names()) {
      AtPlace place;
      place.outlook.place = name;
      place.outlook.until =
          demand_.today() + days{question_.days_between} + days{question_.transit.to(name)};
      latest_ = std::max(latest_, place.outlook.until);
      places_.push_back(std::move(place));
    }
    for (const StockLevel& level : records_.shelf) count(level);
    for (const Reservation* reservation : records_.reservations) {
      const auto at = demand_.branches().position(reservation->place);
      if (at && is_due(*reservation, places_[*at].outlook.until)) {
        places_[*at].outlook.reserved += reservation->quantity;
      }
    }
    for (AtPlace& place : places_) {
      place.movable = std::max(0, place.outlook.on_hand - std::max(0, place.outlook.reserved));
    }
  }

  void count(const StockLevel& level) {
    if (level.quantity <= 0 || (level.lot.use_by && *level.lot.use_by < latest_)) return;
    const auto sort = sort_of_place(clinic_.places, level.place);
    for (AtPlace& place : places_) {
      if (sort == PlaceSort::store && level.place == place.outlook.place) {
        place.outlook.on_hand += level.quantity;
      } else if (level.place == transit_place(place.outlook.place).name) {
        place.outlook.in_transit += level.quantity;
      }
    }
  }

  void foresee() {
    for (std::size_t p = 0; p < places_.size(); ++p) {
      AtPlace& place = places_[p];
      place.users = left_to_chance(clinic_, demand_.users(item_.code, p), records_.reservations,
                                   place.outlook.until);
      place.source.emplace(demand_.of(item_, p, place.users));
      place.demand = place.source->until(place.outlook.until);
      place.outlook.expected = place.demand.mean();
      place.outlook.chance_short_before = place.demand.more_than(place.outlook.position());
    }
  }

  RestockMove move_of(const Parcel& parcel) {
    RestockMove made;
    made.item = item_.code;
    made.quantity = parcel.quantity;
    made.from = places_[parcel.from].outlook;
    made.to = places_[parcel.to].outlook;
    made.transit_days = question_.transit.to(made.to.place);
    made.lots = first_expiry_first_out(records_.shelf, parcel.quantity, latest_, made.from.place,
                                       clinic_.places)
                    .lots;
    take_from_shelf(made.lots);
    for (std::size_t p = 0; p < places_.size(); ++p) {
      const int position = places_[p].outlook.position();
      made.missing_before += expected_short(places_[p].demand, position);
      made.missing_after += expected_short(places_[p].demand, position + changes_[p]);
    }
    made.from.chance_short_after = short_after(parcel.from);
    made.to.chance_short_after = short_after(parcel.to);
    tell_needs(made, parcel.to);
    return made;
  }

  double short_after(std::size_t place) const {
    return places_[place].demand.more_than(places_[place].outlook.position() + changes_[place]);
  }

  /// What goes with one parcel is not there for the next.
  void take_from_shelf(const std::vector<StockLevel>& lots) {
    for (const StockLevel& taken : lots) {
      for (StockLevel& level : records_.shelf) {
        if (level.lot == taken.lot && level.place == taken.place) level.quantity -= taken.quantity;
      }
    }
  }

  void tell_needs(RestockMove& made, std::size_t place) {
    const Date today = demand_.today();
    const LeadTime until{days_between(today, made.to.until), false, {}};
    made.for_new_patients = places_[place].source->for_new_patients(today, until);
    made.not_for_wear = places_[place].source->not_for_wear(today, until);
    for (const auto* life : places_[place].users) {
      const double chance = chance_needed_by_arrival(*life, today, until);
      if (chance < least_named_chance) continue;
      const Unit& unit = clinic_.units[life->unit];
      made.needs.push_back({unit.patient,
                            unit.side,
                            life->unit,
                            chance,
                            0,
                            life->life.worn_out_date(0.1),
                            life->life.worn_out_date(0.5),
                            {}});
    }
    std::ranges::stable_sort(made.needs, std::ranges::greater{}, &ExpectedNeed::chance);
    const std::size_t named = std::min(made.needs.size(), most_named_needs);
    made.more_needs = static_cast<int>(made.needs.size() - named);
    made.needs.resize(named);
  }

  const Clinic& clinic_;
  const PlaceDemand& demand_;
  const RestockQuestion& question_;
  const Item& item_;
  Records records_;
  Date latest_ = {};  ///< the end of the longest interval
  std::vector<AtPlace> places_;
  std::vector<int> changes_;
};

}  // namespace

std::vector<RestockMove> restock(const Clinic& clinic, const PlaceDemand& demand,
                                 const RestockQuestion& question) {
  if (!demand.branches().several()) return {};
  std::unordered_map<ItemCode, Records> records;
  for (const StockLevel& level : clinic.shelf) {
    if (level.quantity > 0) records[level.lot.item].shelf.push_back(level);
  }
  for (const Reservation& reservation : clinic.reservations) {
    records[reservation.item].reservations.push_back(&reservation);
  }
  std::vector<std::pair<const Item*, Records>> work;
  for (const Item& item : clinic.items) {
    const auto found = records.find(item.code);
    if (item.stocked && found != records.end()) work.emplace_back(&item, std::move(found->second));
  }
  std::vector<std::vector<RestockMove>> by_item(work.size());
  in_parallel(work.size(), [&](std::size_t i) {
    by_item[i] =
        ItemRestock{clinic, demand, question, *work[i].first, std::move(work[i].second)}.moves();
  });
  std::vector<RestockMove> made;
  for (auto& moves : by_item) {
    for (RestockMove& move : moves) made.push_back(std::move(move));
  }
  std::ranges::sort(made, {}, [](const RestockMove& move) {
    return std::tie(move.from.place, move.to.place, move.item);
  });
  return made;
}

}  // namespace sparewell::supply
