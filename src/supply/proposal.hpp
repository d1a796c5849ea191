/// What to order now, and why: periodic review, order-up-to, for every item of the catalogue.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/order_policy.hpp"
#include "supply/pmf.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

/// A unit in use that is expected to need this item within the protection interval.
struct ExpectedNeed {
  PatientRef patient;
  Side side = Side::left;
  std::size_t unit = 0;  ///< position in Clinic::units
  /// Within the protection interval, for a stocked line of being worn out, lost or recalled before
  /// the patient leaves the item for another reason; for a patient-ordered one of being worn out.
  double chance = 0;
  /// For a patient-ordered item: of being worn out before what is ordered now arrives.
  double chance_before_this_order = 0;
  std::optional<Date> early;   ///< p10
  std::optional<Date> median;  ///< p50
  std::optional<Date>
      order_by;  ///< p10 less the lead time's 0.9 quantile; for patient-ordered items
};

/// Stock that is there but does not count, and why.
struct UncountedStock {
  StockLevel level;
  bool quarantined = false;
  /// In a store or in transit it does not count because its use-by date falls within the protection
  /// interval.
  PlaceSort sort = PlaceSort::store;
};

/// Of the expected demand, what the patients of one branch are expected to need.
struct PlaceNeed {
  std::string place;
  double expected = 0;  ///< pieces
};

/// The numbers behind a line; desk/ puts them into words.
struct Reason {
  bool patient_ordered = false;
  Date next_order_day;             ///< the first order day after today
  int lead_days = 0;               ///< mean lead time, rounded
  bool lead_days_assumed = false;  ///< the catalogue quotes none
  int receipts_seen = 0;           ///< received orders that the lead time was learned from
  Date protected_until;            ///< next order day plus lead_days
  double expected_demand = 0;      ///< mean over the protection interval
  /// Of expected_demand: for losses, recalls, and patients who change from another item.
  double expected_not_for_wear = 0;
  double expected_for_new_patients = 0;  ///< of expected_demand: for patients who begin
  /// Where the clinic has several stores: expected_demand by place, the main place first. Filled by
  /// tell_places (place_demand.hpp).
  std::vector<PlaceNeed> by_place;
  /// How much faster than on average over the year parts of the kind need replacing in the
  /// protection interval; 1 where the history shows no season.
  double season_factor = 1;
  double service_target = 0;
  /// The most likely first. A stocked line names at most 20, each with a chance of 0.5 % or more; a
  /// patient-ordered line names every unit that it is for.
  std::vector<ExpectedNeed> needs;
  int more_needs = 0;  ///< further units with such a chance that `needs` leaves out
  /// Patient-ordered items: one entry for each promised piece that is neither there nor on order.
  std::vector<PatientRef> reserved_for;
  std::vector<UncountedStock> uncounted;
  int overdue = 0;  ///< of on order: ordered longer ago than twice the lead time
  int booked = 0;   ///< of reserved: booked for a day up to booked_until
  Date booked_until;
  int booked_later = 0;  ///< booked for a later day, and not counted
  int needed = 0;        ///< target less position, before rounding to packs
  int pack_size = 1;
  int min_order = 1;
  /// The wanted chance follows from what missing and left-over pieces cost, not from the target.
  bool target_from_costs = false;
  int least_quantity = 0;       ///< needed, rounded to packs and minimum order
  double saves_a_year = 0;      ///< by ordering more at a time, in the currency's smallest unit
  double chance_expires = 0;    ///< that not all of it is used before it expires
  int order_days_covered = 1;   ///< more when freight makes fewer, larger orders cheaper
  bool joins_order = false;     ///< could wait, but the supplier is ordered from anyway
  int for_free_freight = 0;     ///< pieces of the quantity that bring the order to free freight
  int left_out_for_budget = 0;  ///< pieces wanted beyond the quantity
};

struct ProposalLine {
  SupplierName supplier;
  ItemCode item;
  std::string place;
  int quantity = 0;
  std::optional<Money> unit_cost;  ///< at this quantity, price breaks applied
  int on_hand = 0;                 ///< usable: not expired before use, not quarantined
  int in_transit = 0;              ///< on its way between two places
  int on_order = 0;
  int reserved = 0;  ///< promised, or booked for a day up to reason.booked_until
  /// Order-up-to level; for a patient-ordered item what is on hand, on order and needed.
  int target = 0;
  Date order_by;            ///< last day that keeps the service target; before the next order day
  double chance_short = 0;  ///< of running out before the next order could arrive
  Reason reason;
};

/// Why something that is needed is not ordered today.
enum class HeldFor { budget };

/// A line that is held back: nothing of it is on today's orders.
struct HeldLine {
  ProposalLine line;  ///< as it would have been
  HeldFor reason = HeldFor::budget;
};

struct Proposal {
  /// By supplier and then item code; an item whose catalogue line names no supplier has an empty
  /// one.
  std::vector<ProposalLine> lines;
  std::vector<HeldLine> held;  ///< in the same order
};

/// What should be ordered today. Reserved and booked pieces are certain need (booked.hpp). Stocked
/// items by stocked_line.hpp, those of one supplier taken together by supplier_order.hpp; others by
/// patient_order.hpp; a budget is spent by marginal_value.hpp. Throws std::invalid_argument when
/// the service target is not between 0 and 1. Pure: `today` is an argument, and the order of the
/// records does not matter.
[[nodiscard]] Proposal propose(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                               Date today, const OrderPolicy& policy);

/// The lines by the policy of the clinic's settings.
[[nodiscard]] std::vector<ProposalLine> propose(const Clinic& clinic,
                                                const std::vector<wear::LifeOfUnit>& lives,
                                                Date today);

/// Pieces of `item` needed in the `days` days after today, by all units in use: to replace the
/// item's own when worn out, lost or recalled, and to follow others when resized, exchanged for a
/// reaction or upgraded; and to serve bookings that are due by then, which are certain
/// (booked.hpp).
[[nodiscard]] Pmf demand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                         const ItemCode& item, Date today, int days);

}  // namespace sparewell::supply
