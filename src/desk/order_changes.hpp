/// What a person does with an order: approve, place, cancel, amend, note a promised date. Each is
/// one unit of work; a refusal is one sentence, and then nothing is changed. All throw
/// store::StoreFailure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/stored_order.hpp"

namespace sparewell::desk {

/// The day, and who works.
struct Desk {
  Date today;
  std::string who;
};

/// What was done.
struct OrderChanged {
  std::string sentence;
  int revision = 1;  ///< the one now in force
};

/// Records that a named person has approved the draft at its present sum.
[[nodiscard]] Expected<OrderChanged> approve_order(store::Store& store, const OrderName& name,
                                                   const std::string& approved_by,
                                                   const Desk& desk);

/// Makes a draft count as on order and keeps its first revision. Refuses one that waits for
/// approval.
[[nodiscard]] Expected<OrderChanged> place_order(store::Store& store, const OrderName& name,
                                                 const Desk& desk);

/// The same inside a unit of work of the caller, who commits it.
[[nodiscard]] Expected<OrderChanged> place_order(store::UnitOfWork& work, const OrderName& name,
                                                 const Desk& desk);

/// Cancels what has not come; pieces that have come stay.
[[nodiscard]] Expected<OrderChanged> cancel_order(store::Store& store, const OrderName& name,
                                                  const std::string& why, const Desk& desk);

/// One line as it is to be.
struct LineAmendment {
  ItemCode item;                 ///< a line is added when the order has none for it
  int copy = 0;                  ///< 0: the only line of the item
  std::optional<int> quantity;   ///< pieces in all, those that have come included
  bool drop = false;             ///< cancels what has not come
  std::optional<Date> promised;  ///< when the supplier has promised it
};

struct Amendment {
  std::vector<LineAmendment> lines;
  std::string why;
  std::string approved_by;  ///< who approved a sum that needs it; "" for nobody
};

/// Changes the lines of an order. A draft is simply changed; a placed order gets a new revision,
/// which needs approval when its sum is above the clinic's limit and above what was approved.
/// Refuses fewer pieces than have come.
[[nodiscard]] Expected<OrderChanged> amend_order(store::Store& store, const OrderName& name,
                                                 const Amendment& amendment, const Desk& desk);

/// Notes that the supplier sends the rest of a line later: on `until`, or on a day not yet known.
/// A new revision.
[[nodiscard]] Expected<OrderChanged> back_order(store::Store& store, const OrderName& name,
                                                const ItemCode& item, std::optional<Date> until,
                                                const std::string& why, const Desk& desk);

}  // namespace sparewell::desk
