/// A box came: what is in it, which order it belongs to, and what is recorded of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/item.hpp"
#include "clinic/refusal.hpp"
#include "store/port.hpp"
#include "supply/receiving.hpp"

namespace sparewell::desk {

/// What a person scans and types. What is typed must not contradict what is scanned.
struct ReceivingRequest {
  std::vector<std::string> scans;  ///< all barcodes of one package
  std::string order_ref;           ///< "" to look for the order by the item
  std::string supplier;            ///< "" for any
  std::string item;                ///< "" when a scan says it
  std::optional<int> quantity;     ///< pieces
  std::optional<std::string> lot;
  std::optional<Date> use_by;
  std::string place;                         ///< "" for the clinic's main place
  int damaged = 0;                           ///< pieces of `quantity` that came damaged
  std::string damage;                        ///< what is wrong with them
  bool damaged_settled = false;              ///< the supplier does not replace them
  std::vector<std::string> serials;          ///< of the sound pieces
  std::vector<std::string> damaged_serials;  ///< of the damaged ones
  supply::Accepted accepted;
};

/// A piece that came and is kept for the patient whom it was ordered for.
struct PutAway {
  PatientRef patient;
  std::optional<Side> side;
  std::optional<Date> needed_on;
};

struct ReceivingOutcome {
  Item item;
  supply::Delivery delivery;
  supply::OrderMatch match;
  std::vector<OrderLine> lines;        ///< those that `match` has positions of, as they were before
  supply::Receiving receiving;         ///< stopped unless match.kind is matched
  std::vector<PutAway> put_away = {};  ///< those who need it first come first
  std::vector<PutAway> waiting = {};   ///< whose pieces of these lines are still to come

  [[nodiscard]] bool is_recorded() const { return !receiving.is_stopped(); }
};

/// Finds the order and, unless a finding stops it, records the receipt in the ledger and on the
/// order lines, and keeps the sound pieces that are for named patients as their reservations, those
/// of the earliest need first; all or nothing. Refuses with one sentence, and then nothing is
/// recorded: what cannot be read, contradicts itself or names nothing known; orders that were not
/// sent or were cancelled. Throws store::StoreFailure.
[[nodiscard]] Expected<ReceivingOutcome> receive_delivery(store::Store& store,
                                                          const ReceivingRequest& request,
                                                          Date today, const store::Author& author);

/// What suppliers still owe by what was known on `today`; `supplier` is "" for all. Refuses a
/// supplier that is not known.
[[nodiscard]] Expected<std::vector<supply::ExpectedLine>> read_still_to_come(
    const store::Snapshot& snapshot, const std::string& supplier, Date today);

}  // namespace sparewell::desk
