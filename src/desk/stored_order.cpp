#include "desk/stored_order.hpp"

#include <algorithm>
#include <set>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using store::Snapshot;

template <class Record>
void take_parts(const Snapshot& snapshot, const supply::Order& order, std::vector<Record>& records,
                std::vector<store::RowId>& rows) {
  for (auto& row : snapshot.all<Record>()) {
    if (row.record.order_ref != order.ref || row.record.supplier != order.supplier) continue;
    rows.push_back(row.id);
    records.push_back(std::move(row.record));
  }
}

}  // namespace

Expected<StoredOrder> find_order(const Snapshot& snapshot, const OrderName& name) {
  StoredOrder made;
  std::set<std::string> suppliers;
  for (auto& row : snapshot.lines_of_order(name.ref)) {
    if (!name.supplier.empty() && row.record.supplier.text != name.supplier) continue;
    suppliers.insert(row.record.supplier.text);
    made.line_rows.push_back(row.id);
    made.order.lines.push_back(std::move(row.record));
  }
  if (suppliers.empty()) {
    return refuse(name.supplier.empty() ? say("There is no order '{}'; check its number.", name.ref)
                                        : say("There is no order '{}' of {}; check its number.",
                                              name.ref, name.supplier));
  }
  if (suppliers.size() > 1) {
    return refuse(say("{} each have an order '{}'; name the supplier as well.",
                      list_words({suppliers.begin(), suppliers.end()}), name.ref));
  }
  auto& order = made.order;
  order.ref = name.ref;
  order.supplier = {*suppliers.begin()};
  std::vector<OrderHeader> headers;
  std::vector<store::RowId> header_rows;
  take_parts(snapshot, order, headers, header_rows);
  if (!headers.empty()) {
    order.header = headers.front();
    made.header_row = header_rows.front();
  }
  take_parts(snapshot, order, order.promises, made.promise_rows);
  take_parts(snapshot, order, order.pieces, made.piece_rows);
  return made;
}

OrderHeader header_of(const supply::Order& order) {
  if (order.header) return *order.header;
  OrderHeader made;
  made.supplier = order.supplier;
  made.order_ref = order.ref;
  for (const auto& line : order.lines) {
    if (made.created_on == Date{} || line.ordered_on < made.created_on) {
      made.created_on = line.ordered_on;
    }
    if (line.state == OrderState::placed) made.placed_on = made.created_on;
  }
  return made;
}

void keep_header(store::UnitOfWork& work, StoredOrder& stored, const OrderHeader& header) {
  if (stored.header_row) {
    work.put_instead(*stored.header_row, header);
  } else {
    stored.header_row = work.put(header);
  }
  stored.order.header = header;
}

void keep_line(store::UnitOfWork& work, StoredOrder& stored, std::size_t at,
               const OrderLine& line) {
  work.put_instead(stored.line_rows.at(at), line);
  stored.order.lines.at(at) = line;
}

void add_line(store::UnitOfWork& work, StoredOrder& stored, const OrderLine& line) {
  stored.line_rows.push_back(work.put(line));
  stored.order.lines.push_back(line);
}

void keep_promise(store::UnitOfWork& work, StoredOrder& stored, const OrderPromise& promise) {
  auto& promises = stored.order.promises;
  const auto found = std::ranges::find_if(promises, [&](const OrderPromise& p) {
    return p.item == promise.item && p.copy == promise.copy;
  });
  if (found == promises.end()) {
    stored.promise_rows.push_back(work.put(promise));
    promises.push_back(promise);
    return;
  }
  work.put_instead(stored.promise_rows[static_cast<std::size_t>(found - promises.begin())],
                   promise);
  *found = promise;
}

}  // namespace sparewell::desk
