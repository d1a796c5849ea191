#include "desk/receiving.hpp"

#include <fmt/format.h>

#include "desk/label_item.hpp"
#include "desk/receiving_words.hpp"
#include "exchange/barcode/read_label.hpp"

namespace sparewell::desk {
namespace {

using store::Row;
using store::Snapshot;

template <class Record>
std::vector<Record> records(const Snapshot& snapshot) {
  std::vector<Record> made;
  for (auto& row : snapshot.all<Record>()) made.push_back(std::move(row.record));
  return made;
}

Expected<exchange::Label> read_scans(const ReceivingRequest& request, Date today) {
  if (request.scans.empty()) return exchange::Label{};
  auto label = exchange::read_label(request.scans, today);
  // A person who has typed the lot has looked at the label.
  if (label && !label->doubt.empty() && !request.lot) return refuse(label->doubt);
  return label;
}

Expected<Item> item_of(const Snapshot& snapshot, const ReceivingRequest& request,
                       const exchange::Label& label) {
  if (request.item.empty() && request.scans.empty()) {
    return refuse("Name the item that came, or scan its label.");
  }
  if (request.item.empty()) return item_of_label(label, records<Item>(snapshot));
  const auto known = snapshot.item({request.item});
  if (!known) {
    return refuse(fmt::format("The catalogue has no item '{}'; check the code.", request.item));
  }
  if (!label.names_item()) return known->record;
  const auto scanned = item_of_label(label, records<Item>(snapshot));
  if (scanned && scanned->code != known->record.code) {
    return refuse(fmt::format("The label is that of {}, not of {}; look which one came.",
                              scanned->code.text, request.item));
  }
  return known->record;
}

tl::unexpected<Refusal> refuse_contradiction(const char* what, const std::string& typed,
                                             const std::string& scanned) {
  return refuse(fmt::format("The {} {} was typed, but the label says {}; look which one is right.",
                            what, typed, scanned));
}

/// What was typed and what was scanned as one delivery.
Expected<supply::Delivery> delivery_of(const Snapshot& snapshot, const ReceivingRequest& request,
                                       const exchange::Label& label, const ItemCode& item,
                                       Date today) {
  supply::Delivery made;
  made.item = item;
  made.on = today;
  made.place = request.place.empty() ? snapshot.settings().main_place : request.place;
  made.lot = request.lot.value_or(label.lot);
  const bool typed_lot_differs = request.lot && !label.lot.empty() && *request.lot != label.lot;
  if (typed_lot_differs && label.doubt.empty()) {
    return refuse_contradiction("lot", *request.lot, label.lot);
  }
  made.use_by = request.use_by ? request.use_by : label.use_by;
  if (request.use_by && label.use_by && *request.use_by != *label.use_by) {
    return refuse_contradiction("use-by date", iso_text(*request.use_by), iso_text(*label.use_by));
  }
  // Many packages may have come; their label counts one of them.
  const auto quantity = request.quantity ? request.quantity : label.quantity;
  if (!quantity) return refuse("Say how many pieces came: the label does not.");
  if (*quantity < 1) return refuse("At least one piece must have come.");
  made.quantity = *quantity;
  return made;
}

std::vector<OrderLine> plain(const std::vector<Row<OrderLine>>& rows) {
  std::vector<OrderLine> made;
  made.reserve(rows.size());
  for (const auto& row : rows) made.push_back(row.record);
  return made;
}

void record(store::UnitOfWork& work, const std::vector<Row<OrderLine>>& rows,
            const supply::Receiving& receiving) {
  work.record(*receiving.movement);
  for (const auto& receipt : receiving.lines) {
    work.put_instead(rows[receipt.line].id, receipt.after);
  }
  work.commit();
}

}  // namespace

Expected<ReceivingOutcome> receive_delivery(store::Store& store, const ReceivingRequest& request,
                                            Date today, const store::Author& author) {
  const auto label = read_scans(request, today);
  if (!label) return tl::unexpected(label.error());
  const auto work = store.begin_write(author);
  auto item = item_of(*work, request, *label);
  if (!item) return tl::unexpected(item.error());
  auto delivery = delivery_of(*work, request, *label, item->code, today);
  if (!delivery) return tl::unexpected(delivery.error());
  const auto rows = request.order_ref.empty() ? work->order_lines_of(item->code)
                                              : work->lines_of_order(request.order_ref);
  ReceivingOutcome made{std::move(*item), std::move(*delivery), {}, plain(rows), {}};
  made.match =
      supply::match_order(made.lines, made.item.code, request.order_ref, {request.supplier});
  if (auto refusal = match_refusal(made, request.order_ref); !refusal.empty()) {
    return refuse(std::move(refusal));
  }
  if (made.match.kind != supply::OrderMatch::Kind::matched) return made;
  made.receiving = supply::receive(made.delivery, made.item, made.lines, made.match,
                                   work->shelf_of(made.item.code), request.accepted);
  if (made.is_recorded()) record(*work, rows, made.receiving);
  return made;
}

Expected<std::vector<supply::ExpectedLine>> read_still_to_come(const Snapshot& snapshot,
                                                               const std::string& supplier,
                                                               Date today) {
  Clinic clinic;
  clinic.suppliers = records<Supplier>(snapshot);
  if (!supplier.empty() && ClinicIndex{clinic}.supplier({supplier}) == nullptr) {
    return refuse(fmt::format("There is no supplier '{}'; check the name.", supplier));
  }
  clinic.items = records<Item>(snapshot);
  clinic.order_lines = records<OrderLine>(snapshot);
  return supply::still_to_come(as_of(std::move(clinic), today), {supplier}, today);
}

}  // namespace sparewell::desk
