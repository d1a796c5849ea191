#include "desk/receiving.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/label_item.hpp"
#include "desk/put_away.hpp"
#include "desk/receiving_words.hpp"
#include "desk/wording.hpp"
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
    return refuse(say("Name the item that came, or scan its label."));
  }
  if (request.item.empty()) return item_of_label(label, records<Item>(snapshot));
  const auto known = snapshot.item({request.item});
  if (!known) {
    return refuse(say("The catalogue has no item '{}'; check the code.", request.item));
  }
  if (!label.names_item()) return known->record;
  const auto scanned = item_of_label(label, records<Item>(snapshot));
  if (scanned && scanned->code != known->record.code) {
    return refuse(say("The label is that of {}, not of {}; look which one came.",
                      scanned->code.text, request.item));
  }
  return known->record;
}

/// Why not, or "".
std::string take_damage(const ReceivingRequest& request, supply::Delivery& delivery) {
  delivery.damaged = request.damaged;
  delivery.damage = request.damage;
  delivery.damaged_settled = request.damaged_settled;
  if (request.damaged < 0) return said("The number of damaged pieces cannot be below zero.");
  if (request.damaged <= delivery.quantity) return {};
  return say("{} came, so {} of them cannot be damaged; count again.",
             count_words(delivery.quantity, "piece", "pieces"), request.damaged);
}

/// Sound pieces first.
std::vector<std::string> all_serials(const supply::Delivery& delivery) {
  auto made = delivery.serials;
  made.insert(made.end(), delivery.damaged_serials.begin(), delivery.damaged_serials.end());
  return made;
}

std::string too_many_words(const std::vector<std::string>& serials, int pieces, bool sound) {
  const auto numbers = count_words(std::ssize(serials), "serial number", "serial numbers");
  return sound ? say("{} do not fit {}; give one for each sound piece at most.", numbers,
                     count_words(pieces, "sound piece", "sound pieces"))
               : say("{} do not fit {}; give one for each damaged piece at most.", numbers,
                     count_words(pieces, "damaged piece", "damaged pieces"));
}

/// Why not, or "". The serial number on a scanned label counts as one that was given: of a damaged
/// piece when nothing else came.
std::string take_serials(const ReceivingRequest& request, const exchange::Label& label,
                         supply::Delivery& delivery) {
  delivery.serials = request.serials;
  delivery.damaged_serials = request.damaged_serials;
  auto given = all_serials(delivery);
  if (!label.serial.empty() && std::ranges::find(given, label.serial) == given.end()) {
    auto& scanned = delivery.sound() > 0 ? delivery.serials : delivery.damaged_serials;
    scanned.push_back(label.serial);
    given = all_serials(delivery);
  }
  for (auto one = given.begin(); one != given.end(); ++one) {
    if (one->empty()) return said("A serial number is empty; write them as S1,S2.");
    if (std::find(given.begin(), one, *one) != one) {
      return say("The serial number {} was given twice; each piece has its own.", *one);
    }
  }
  if (std::ssize(delivery.serials) > delivery.sound()) {
    return too_many_words(delivery.serials, delivery.sound(), true);
  }
  if (std::ssize(delivery.damaged_serials) > delivery.damaged) {
    return too_many_words(delivery.damaged_serials, delivery.damaged, false);
  }
  return {};
}

/// What the records have of the serial numbers of this delivery: patients go before receipts,
/// because they say where the piece is now.
std::vector<supply::KnownSerial> known_serials(const Snapshot& snapshot,
                                               const supply::Delivery& delivery) {
  const auto given = all_serials(delivery);
  if (given.empty()) return {};
  const auto units = snapshot.units_of(delivery.item);
  std::vector<supply::KnownSerial> made;
  for (const auto& serial : given) {
    const auto unit = std::ranges::find_if(
        units, [&](const Row<Unit>& row) { return row.record.serial == serial; });
    if (unit != units.end()) {
      made.push_back({serial, unit->record.issued_on, unit->record.patient});
      continue;
    }
    const auto movements = snapshot.movements_of(delivery.item, serial);
    if (!movements.empty()) made.push_back({serial, movements.front().on, {}});
  }
  return made;
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
    return refuse(say("The lot {} was typed, but the label says {}; look which one is right.",
                      *request.lot, label.lot));
  }
  made.use_by = request.use_by ? request.use_by : label.use_by;
  if (request.use_by && label.use_by && *request.use_by != *label.use_by) {
    return refuse(
        say("The use-by date {} was typed, but the label says {}; look which one is right.",
            iso_text(*request.use_by), iso_text(*label.use_by)));
  }
  // Many packages may have come; their label counts one of them.
  const auto quantity = request.quantity ? request.quantity : label.quantity;
  if (!quantity) return refuse(say("Say how many pieces came: the label does not."));
  if (*quantity < 1) return refuse(say("At least one piece must have come."));
  made.quantity = *quantity;
  if (auto refusal = take_damage(request, made); !refusal.empty()) return refuse(refusal);
  if (auto refusal = take_serials(request, label, made); !refusal.empty()) return refuse(refusal);
  return made;
}

std::vector<OrderLine> plain(const std::vector<Row<OrderLine>>& rows) {
  std::vector<OrderLine> made;
  made.reserve(rows.size());
  for (const auto& row : rows) made.push_back(row.record);
  return made;
}

void record(store::UnitOfWork& work, const std::vector<Row<OrderLine>>& rows,
            ReceivingOutcome& outcome) {
  const auto& receiving = outcome.receiving;
  if (receiving.movement) work.record(*receiving.movement);
  if (receiving.damaged) work.record(*receiving.damaged);
  for (const auto& receipt : receiving.lines) {
    work.put_instead(rows[receipt.line].id, receipt.after);
  }
  put_away_for_patients(work, outcome);
  leave_on_back_order(work, outcome);
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
  ReceivingOutcome made{std::move(*item), std::move(*delivery), {}, plain(rows), {}, {}, {}};
  made.match =
      supply::match_order(made.lines, made.item.code, request.order_ref, {request.supplier});
  if (auto refusal = match_refusal(made, request.order_ref); !refusal.empty()) {
    return refuse(std::move(refusal));
  }
  if (made.match.kind != supply::OrderMatch::Kind::matched) return made;
  made.receiving = supply::receive(made.delivery, made.item, made.lines, made.match,
                                   work->shelf_of(made.item.code), request.accepted,
                                   known_serials(*work, made.delivery));
  if (made.is_recorded()) record(*work, rows, made);
  return made;
}

Expected<std::vector<supply::ExpectedLine>> read_still_to_come(const Snapshot& snapshot,
                                                               const std::string& supplier,
                                                               Date today) {
  Clinic clinic;
  clinic.suppliers = records<Supplier>(snapshot);
  if (!supplier.empty() && ClinicIndex{clinic}.supplier({supplier}) == nullptr) {
    return refuse(say("There is no supplier '{}'; check the name.", supplier));
  }
  clinic.items = records<Item>(snapshot);
  clinic.order_lines = records<OrderLine>(snapshot);
  clinic.order_promises = records<OrderPromise>(snapshot);
  return supply::still_to_come(as_of(std::move(clinic), today), {supplier}, today);
}

}  // namespace sparewell::desk
