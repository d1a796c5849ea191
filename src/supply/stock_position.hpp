/// What of one item can be counted on: usable on hand, on order, promised.
#pragma once

#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/proposal.hpp"

namespace sparewell::supply {

struct StockPosition {
  int on_hand = 0;     ///< usable: in a store, and not expired before `usable_until`
  int in_transit = 0;  ///< usable as soon as it arrives
  int on_order = 0;
  int reserved = 0;                       ///< promised, or booked for a day up to `booked_until`
  int booked = 0;                         ///< of reserved: for a day
  int booked_later = 0;                   ///< booked for a later day, and not counted
  int overdue = 0;                        ///< of on_order: ordered before `overdue_before`
  std::vector<UncountedStock> uncounted;  ///< by lot, place

  [[nodiscard]] int total() const { return on_hand + in_transit + on_order - reserved; }
};

/// Stock, orders and reservations of a clinic by item. Refers to the clinic, which must outlive it.
class StockBook {
 public:
  explicit StockBook(const Clinic& clinic);

  /// Stock whose use-by date lies before `usable_until` does not count: it would expire before the
  /// interval that it should cover has ended. Stock without a use-by date counts. Reservations
  /// count when they are due by `booked_until` (booked.hpp).
  [[nodiscard]] StockPosition position(const ItemCode& item, Date usable_until, Date overdue_before,
                                       Date booked_until) const;
  /// Reservations of the item, the soonest first, those without a day before them.
  [[nodiscard]] std::vector<const Reservation*> reservations(const ItemCode& item) const;

 private:
  struct Records {
    std::vector<const StockLevel*> shelf;
    std::vector<const OrderLine*> orders;
    std::vector<const Reservation*> reservations;
  };
  const Clinic* clinic_;
  std::unordered_map<ItemCode, Records> items_;
};

}  // namespace sparewell::supply
