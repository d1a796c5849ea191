/// One order as it is stored, with the rows to change.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "store/port.hpp"
#include "supply/order_life.hpp"

namespace sparewell::desk {

/// How a person names an order. Two suppliers may have orders of one number.
struct OrderName {
  std::string ref;
  std::string supplier;  ///< "" when the number is enough
};

struct StoredOrder {
  supply::Order order;
  // In the order of the lists of `order`.
  std::vector<store::RowId> line_rows;
  std::vector<store::RowId> promise_rows;
  std::vector<store::RowId> piece_rows;
  std::optional<store::RowId> header_row;
};

/// Refuses a number that no order has, and one that orders of several suppliers have.
[[nodiscard]] Expected<StoredOrder> find_order(const store::Snapshot& snapshot,
                                               const OrderName& name);

/// The header, or what follows from the lines of an order that has none.
[[nodiscard]] OrderHeader header_of(const supply::Order& order);

// Each writes one part of `stored`, in the store and in `stored` itself.
void keep_header(store::UnitOfWork& work, StoredOrder& stored, const OrderHeader& header);
void keep_line(store::UnitOfWork& work, StoredOrder& stored, std::size_t at, const OrderLine& line);
void add_line(store::UnitOfWork& work, StoredOrder& stored, const OrderLine& line);
/// Keeps what was promised for the line that it names.
void keep_promise(store::UnitOfWork& work, StoredOrder& stored, const OrderPromise& promise);

}  // namespace sparewell::desk
