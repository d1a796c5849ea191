/// Carries out the operations of the stock model through the program's own code.
#pragma once

#include <memory>
#include <string>

#include "desk/stock_booking.hpp"
#include "desk/stock_model.hpp"

namespace sparewell::test {

/// Suppliers, patients, items, places, and one large open order for each item.
void prepare_clinic(store::Store& store);

/// True when it was carried out, false when it was refused.
bool carry_out(store::UnitOfWork& work, const Operation& operation);
/// Records a receipt as a delivery against the item's open order, in a unit of work of its own.
bool receive(store::Store& store, const Operation& operation);

/// The ledger's shelf in the model's terms; throws for a lot that the model does not know.
[[nodiscard]] std::map<std::pair<int, std::string>, int> shelf_of(const store::Snapshot& snapshot);
/// Loans and returns as the model has them.
[[nodiscard]] bool has_same_records(const store::Snapshot& snapshot, const StockModel& model);

inline const store::Author tester{"tester", "stock work"};

}  // namespace sparewell::test
