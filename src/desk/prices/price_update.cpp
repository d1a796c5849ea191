#include "desk/prices/price_update.hpp"

#include <algorithm>
#include <unordered_map>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

Expected<Supplier> supplier_of(const store::Snapshot& snapshot, const SupplierName& name) {
  for (auto& row : snapshot.all<Supplier>()) {
    if (row.record.name == name) return std::move(row.record);
  }
  return refuse(say("There is no supplier '{}'; check the name.", name.text));
}

/// Compares with what is stored in `snapshot`.
Expected<PriceListOutcome> compare(const store::Snapshot& snapshot, const PriceListRequest& request,
                                   const exchange::SheetTable& table) {
  const auto supplier = supplier_of(snapshot, request.supplier);
  if (!supplier) return tl::unexpected(supplier.error());
  auto list = read_price_list(table, supplier->currency, request.columns, request.format);
  if (!list) return tl::unexpected(list.error());
  std::vector<Item> catalogue;
  for (auto& row : snapshot.all<Item>()) catalogue.push_back(std::move(row.record));
  PriceListOutcome made;
  made.file = list->name;
  made.ignored = std::move(list->ignored);
  made.found =
      supply::compare_prices(list->rows, catalogue, request.supplier, request.take_descriptions);
  // An item whose row could not be read is on the list all the same.
  std::erase_if(made.found.missing, [&](const Item& item) {
    return std::ranges::any_of(list->unread, [&](const supply::PriceRow& row) {
      return (!row.supplier_item.empty() && row.supplier_item == item.supplier_item) ||
             (!row.item_code.empty() && row.item_code == item.code.text) ||
             (!row.gtin.empty() && row.gtin == item.gtin);
    });
  });
  auto& refused = made.found.refused;
  refused.insert(refused.end(), list->refused.begin(), list->refused.end());
  std::ranges::stable_sort(refused, {}, &supply::RefusedPriceRow::row);
  return made;
}

void write_changes(store::UnitOfWork& work, PriceListOutcome& outcome, PriceAcceptance acceptance) {
  for (const auto& change : outcome.found.changes) {
    if (!change.changes_item()) continue;
    if (!change.doubts.empty() && acceptance != PriceAcceptance::doubtful_too) {
      ++outcome.held_back;
      continue;
    }
    const auto row = work.item(change.before.code);
    work.put_instead(row->id, change.after);
    ++outcome.written;
  }
  if (outcome.written > 0) work.commit();
}

}  // namespace

Expected<PriceListOutcome> update_prices(store::Store& store, const PriceListRequest& request,
                                         PriceAcceptance acceptance, const std::string& who) {
  const auto table = exchange::read_sheet(request.file, request.sheet, request.format);
  if (!table) return tl::unexpected(table.error());
  if (acceptance == PriceAcceptance::nothing) return compare(*store.read(), request, *table);
  const auto work = store.begin_write(
      {who, fmt::format("price list {} of {}", table->name, request.supplier.text)});
  auto outcome = compare(*work, request, *table);
  if (outcome) write_changes(*work, *outcome, acceptance);
  return outcome;
}

}  // namespace sparewell::desk
