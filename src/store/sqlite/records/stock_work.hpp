/// Columns of places, loans and returns to suppliers.
#pragma once

#include "clinic/loan.hpp"
#include "clinic/place.hpp"
#include "clinic/say.hpp"
#include "clinic/supplier_return.hpp"
#include "store/sqlite/records/stock.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<Place> {
  static constexpr Subject subject{to_say("place"), to_say("name")};
  static constexpr const char* name = "places";

  template <class Fields, class P>
  static void describe(Fields& f, P& place) {
    f("name", place.name);
    f("sort", place.sort);
    f("leads_to", place.leads_to);
  }
};

template <>
struct Table<Loan> {
  static constexpr Subject subject{to_say("loan"), to_say("number")};
  static constexpr const char* name = "loans";

  template <class Fields, class L>
  static void describe(Fields& f, L& loan) {
    f("number", loan.number);
    f.reference("patient_id", loan.patient);
    f("side", loan.side);
    Table<Lot>::describe(f, loan.lot);
    f("quantity", loan.quantity);
    f("place", loan.place);
    f("lent_on", loan.lent_on);
    f("due_on", loan.due_on);
    f("came_back", loan.came_back);
    f("kept", loan.kept);
    f("lost", loan.lost);
    f("note", loan.note);
  }
};

template <>
struct Table<SupplierReturn> {
  static constexpr Subject subject{to_say("return to a supplier"), to_say("number")};
  static constexpr const char* name = "supplier_returns";

  template <class Fields, class R>
  static void describe(Fields& f, R& sent) {
    f("number", sent.number);
    f.reference("supplier_id", sent.supplier);
    f("reference", sent.reference);
    Table<Lot>::describe(f, sent.lot);
    f("quantity", sent.quantity);
    f("reason", sent.reason);
    f("sent_on", sent.sent_on);
    f("due", sent.due);
    f("credited", sent.credited);
    f("closed_on", sent.closed_on);
  }
};

}  // namespace sparewell::store::sqlite
