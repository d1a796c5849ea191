#include "desk/order_revisions.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/order_workbook.hpp"

namespace sparewell::desk {
namespace {

using store::Snapshot;

std::string piece_text(const PieceForPatient& piece) {
  if (!piece.side) return piece.patient.text;
  return fmt::format("{} {}", piece.patient.text, word(*piece.side));
}

PieceForPatient piece_from(const std::string& text) {
  for (const Side side : {Side::left, Side::right}) {
    const auto ending = fmt::format(" {}", word(side));
    if (text.ends_with(ending)) return {{text.substr(0, text.size() - ending.size())}, side};
  }
  return {{text}, {}};
}

/// Whom the line's pieces are for: what has come, and of the rest those served first.
std::vector<std::string> for_patients(const supply::Order& order, const OrderLine& line) {
  std::vector<OrderPiece> pieces;
  for (const auto* piece : order.pieces_of(line)) pieces.push_back(*piece);
  std::vector<PieceForPatient> chosen;
  int room = line.quantity;
  for (const auto& piece : pieces) {
    if (!piece.put_away_on) continue;
    chosen.push_back({piece.patient, piece.side});
    --room;
  }
  for (const auto at : supply::first_served(pieces, room)) {
    chosen.push_back({pieces[at].patient, pieces[at].side});
  }
  std::ranges::sort(chosen);
  std::vector<std::string> made;
  for (const auto& piece : chosen) made.push_back(piece_text(piece));
  return made;
}

OrderRevision revision_head(const Snapshot& snapshot, const supply::Order& order) {
  OrderRevision made;
  const OrderHeader header = header_of(order);
  made.supplier = order.supplier;
  made.order_ref = order.ref;
  made.revision = header.revision;
  made.ordered_on = order.lines.front().ordered_on;
  made.expected_by = header.expected_by;
  for (const auto& row : snapshot.all<Supplier>()) {
    if (row.record.name == order.supplier) made.account = row.record.account;
  }
  const auto settings = snapshot.settings();
  made.clinic_name = settings.name;
  made.ship_to = settings.ship_to;
  return made;
}

OrderRevisionLine revision_line(const Snapshot& snapshot, const supply::Order& order,
                                const OrderLine& line) {
  OrderRevisionLine made;
  made.supplier = order.supplier;
  made.order_ref = order.ref;
  made.revision = header_of(order).revision;
  made.item = line.item;
  if (const auto item = snapshot.item(line.item)) {
    made.supplier_item = item->record.supplier_item;
    made.description = item->record.description;
    made.size_label = item->record.size_label;
  }
  made.quantity = line.quantity;
  made.unit_cost = line.unit_cost;
  if (const auto* promise = order.promise(line)) made.promised_on = promise->promised_on;
  made.for_patients = for_patients(order, line);
  return made;
}

}  // namespace

std::string shown_piece(const std::string& text) {
  const auto piece = piece_from(text);
  return piece.side ? fmt::format("{} {}", piece.patient.text, shown_word(*piece.side)) : text;
}

void keep_revision(store::UnitOfWork& work, const StoredOrder& stored, Date today,
                   const std::string& who, const std::string& why) {
  auto head = revision_head(work, stored.order);
  head.made_on = today;
  head.made_by = who;
  head.why = why;
  work.put(head);
  int position = 0;
  for (const auto& line : stored.order.lines) {
    if (line.state == OrderState::cancelled) continue;
    auto kept = revision_line(work, stored.order, line);
    kept.position = ++position;
    work.put(kept);
  }
}

void keep_first_revision(store::UnitOfWork& work, StoredOrder& stored, Date today) {
  if (!revisions_of(work, stored.order).empty()) return;
  keep_header(work, stored, header_of(stored.order));
  keep_revision(work, stored, stored.order.header->placed_on.value_or(today), "",
                to_say("as it was recorded before its first amendment"));
}

void keep_next_revision(store::UnitOfWork& work, StoredOrder& stored, Date today,
                        const std::string& who, const std::string& why) {
  auto header = header_of(stored.order);
  ++header.revision;
  keep_header(work, stored, header);
  keep_revision(work, stored, today, who, why);
}

std::vector<KeptRevision> revisions_of(const Snapshot& snapshot, const supply::Order& order) {
  std::map<int, KeptRevision> made;
  const auto is_of = [&](const auto& record) {
    return record.supplier == order.supplier && record.order_ref == order.ref;
  };
  for (auto& row : snapshot.all<OrderRevision>()) {
    if (is_of(row.record)) made[row.record.revision].head = std::move(row.record);
  }
  for (auto& row : snapshot.all<OrderRevisionLine>()) {
    if (is_of(row.record)) made[row.record.revision].lines.push_back(std::move(row.record));
  }
  std::vector<KeptRevision> list;
  for (auto& [number, revision] : made) list.push_back(std::move(revision));
  return list;
}

PurchaseOrder purchase_order_of(const KeptRevision& revision) {
  PurchaseOrder made;
  made.number = revision.head.order_ref;
  made.revision = revision.head.revision;
  made.supplier.name = revision.head.supplier;
  made.supplier.account = revision.head.account;
  made.clinic_name = revision.head.clinic_name;
  made.ship_to = revision.head.ship_to;
  made.ordered_on = revision.head.ordered_on;
  made.expected_by = revision.head.expected_by;
  for (const auto& line : revision.lines) {
    PurchaseOrderLine& to = made.lines.emplace_back();
    to.supplier_item = line.supplier_item;
    to.item = line.item;
    to.description = line.description;
    to.size_label = line.size_label;
    to.quantity = line.quantity;
    to.unit_cost = line.unit_cost;
    for (const auto& text : line.for_patients) to.for_patients.push_back(piece_from(text));
  }
  return made;
}

Expected<ReprintedOrder> reprint_order(const Snapshot& snapshot, const OrderName& name,
                                       int revision, const std::filesystem::path& folder) {
  const auto stored = find_order(snapshot, name);
  if (!stored) return tl::unexpected(stored.error());
  const auto kept = revisions_of(snapshot, stored->order);
  if (kept.empty()) {
    return refuse(
        say("No revision of order {} is kept: it was not placed with this "
            "program yet; write the order workbooks instead.",
            name.ref));
  }
  const int wanted = revision == 0 ? kept.back().head.revision : revision;
  const auto found = std::ranges::find_if(
      kept, [&](const KeptRevision& one) { return one.head.revision == wanted; });
  if (found == kept.end()) {
    return refuse(say("Order {} has no revision {}; the latest is {}.", name.ref, wanted,
                      kept.back().head.revision));
  }
  if (found->lines.empty()) {
    return refuse(say(
        "Revision {} of order {} cancelled all of it and has no lines to print; name an earlier "
        "revision.",
        wanted, name.ref));
  }
  std::error_code failure;
  std::filesystem::create_directories(folder, failure);
  if (failure) {
    throw std::runtime_error{say("The folder {} cannot be made: {}; choose another.",
                                 folder.string(), failure.message())};
  }
  const auto order = purchase_order_of(*found);
  ReprintedOrder made{wanted, folder / exchange::order_file_name(order)};
  exchange::write_order_workbook(order, made.file);
  return made;
}

}  // namespace sparewell::desk
