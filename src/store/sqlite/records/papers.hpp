/// Columns of orders, claims and invoices.
#pragma once

#include "clinic/claim.hpp"
#include "clinic/order.hpp"
#include "clinic/say.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<OrderLine> {
  static constexpr Subject subject{to_say("order line"),
                                   to_say("supplier, order, item and copy number")};
  static constexpr const char* name = "order_lines";

  template <class Fields, class L>
  static void describe(Fields& f, L& line) {
    f.reference("supplier_id", line.supplier);
    f("order_ref", line.order_ref);
    f.reference("item_id", line.item);
    f("ordered_on", line.ordered_on);
    f("quantity", line.quantity);
    f("unit_cost", line.unit_cost);
    f("received_on", line.received_on);
    f("received_quantity", line.received_quantity);
    f("state", line.state);
    f("copy", line.copy);
  }
};

template <>
struct Table<ClaimLine> {
  static constexpr Subject subject{
      to_say("claim line"),
      to_say("claim, patient, side, day of service, code, modifiers and copy number")};
  static constexpr const char* name = "claim_lines";

  template <class Fields, class L>
  static void describe(Fields& f, L& line) {
    f("claim_ref", line.claim_ref);
    f.reference("patient_id", line.patient);
    f("side", line.side);
    f("service_date", line.service_date);
    f("code", line.code);
    f("modifiers", line.modifiers);
    f("quantity", line.quantity);
    f("charge", line.charge);
    f("copy", line.copy);
    f("payer", line.payer);
    f("submission", line.submission);
    f("replaces", line.replaces);
    f("line_control", line.line_control);
  }
};

template <>
struct Table<InvoiceLine> {
  static constexpr Subject subject{to_say("invoice line"),
                                   to_say("supplier, invoice, order, item and copy number")};
  static constexpr const char* name = "invoice_lines";

  template <class Fields, class L>
  static void describe(Fields& f, L& line) {
    f.reference("supplier_id", line.supplier);
    f("invoice_ref", line.invoice_ref);
    f("order_ref", line.order_ref);
    f.reference("item_id", line.item);
    f("quantity", line.quantity);
    f("unit_cost", line.unit_cost);
    f("invoiced_on", line.invoiced_on);
    f("copy", line.copy);
    f("freight", line.freight);
  }
};

}  // namespace sparewell::store::sqlite
