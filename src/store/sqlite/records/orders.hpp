/// Columns of what is kept of an order beside its lines.
#pragma once

#include "clinic/order_record.hpp"
#include "clinic/say.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<OrderHeader> {
  static constexpr Subject subject{to_say("order"), to_say("supplier and order number")};
  static constexpr const char* name = "order_headers";

  template <class Fields, class H>
  static void describe(Fields& f, H& header) {
    f.reference("supplier_id", header.supplier);
    f("order_ref", header.order_ref);
    f("revision", header.revision);
    f("created_on", header.created_on);
    f("placed_on", header.placed_on);
    f("expected_by", header.expected_by);
    f("approved_by", header.approved_by);
    f("approved_on", header.approved_on);
    f("approved_sum", header.approved_sum);
    f("approved_unpriced", header.approved_unpriced);
    f("cancelled_on", header.cancelled_on);
    f("cancelled_why", header.cancelled_why);
  }
};

template <>
struct Table<OrderPromise> {
  static constexpr Subject subject{to_say("promised date"),
                                   to_say("supplier, order, item and copy number")};
  static constexpr const char* name = "order_promises";

  template <class Fields, class P>
  static void describe(Fields& f, P& promise) {
    f.reference("supplier_id", promise.supplier);
    f("order_ref", promise.order_ref);
    f.reference("item_id", promise.item);
    f("copy", promise.copy);
    f("promised_on", promise.promised_on);
    f("on_back_order", promise.on_back_order);
  }
};

template <>
struct Table<OrderPiece> {
  static constexpr Subject subject{to_say("ordered piece"),
                                   to_say("supplier, order, item, copy number and position")};
  static constexpr const char* name = "order_pieces";

  template <class Fields, class P>
  static void describe(Fields& f, P& piece) {
    f.reference("supplier_id", piece.supplier);
    f("order_ref", piece.order_ref);
    f.reference("item_id", piece.item);
    f("copy", piece.copy);
    f("position", piece.position);
    f.reference("patient_id", piece.patient);
    f("side", piece.side);
    f("needed_on", piece.needed_on);
    f("promised", piece.promised);
    f("put_away_on", piece.put_away_on);
  }
};

template <>
struct Table<OrderRevision> {
  static constexpr Subject subject{to_say("order revision"),
                                   to_say("supplier, order and revision")};
  static constexpr const char* name = "order_revisions";

  template <class Fields, class R>
  static void describe(Fields& f, R& revision) {
    f.reference("supplier_id", revision.supplier);
    f("order_ref", revision.order_ref);
    f("revision", revision.revision);
    f("made_on", revision.made_on);
    f("made_by", revision.made_by);
    f("why", revision.why);
    f("ordered_on", revision.ordered_on);
    f("expected_by", revision.expected_by);
    f("account", revision.account);
    f("clinic_name", revision.clinic_name);
    f("ship_to", revision.ship_to);
  }
};

template <>
struct Table<OrderRevisionLine> {
  static constexpr Subject subject{to_say("line of an order revision"),
                                   to_say("supplier, order, revision and position")};
  static constexpr const char* name = "order_revision_lines";

  template <class Fields, class L>
  static void describe(Fields& f, L& line) {
    f.reference("supplier_id", line.supplier);
    f("order_ref", line.order_ref);
    f("revision", line.revision);
    f("position", line.position);
    f.reference("item_id", line.item);
    f("supplier_item", line.supplier_item);
    f("description", line.description);
    f("size_label", line.size_label);
    f("quantity", line.quantity);
    f("unit_cost", line.unit_cost);
    f("promised_on", line.promised_on);
    f("for_patients", line.for_patients);
  }
};

}  // namespace sparewell::store::sqlite
