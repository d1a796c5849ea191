/// What is kept of an order beside its lines: approval, promises, patients, and what was sent.
/// Orders that were imported have lines only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// An order as a whole. Its state follows from this and its lines (supply/order_life).
struct OrderHeader {
  SupplierName supplier;
  std::string order_ref;
  int revision = 1;  ///< the one in force
  Date created_on;
  std::optional<Date> placed_on;  ///< empty while it is a draft
  std::optional<Date> expected_by;
  std::string approved_by;  ///< "" while nobody has
  std::optional<Date> approved_on;
  std::optional<Money> approved_sum;  ///< of the lines whose cost was known
  int approved_unpriced = 0;          ///< pieces of unknown cost that were approved with it
  std::optional<Date> cancelled_on;
  std::string cancelled_why;

  friend bool operator==(const OrderHeader&, const OrderHeader&) = default;
};

/// What a supplier has promised for the order line with the same key.
struct OrderPromise {
  SupplierName supplier;
  std::string order_ref;
  ItemCode item;
  int copy = 1;
  std::optional<Date> promised_on;
  bool on_back_order = false;  ///< the rest comes later than was agreed; a date may be missing

  friend bool operator==(const OrderPromise&, const OrderPromise&) = default;
};

/// An ordered piece that is for a named patient.
struct OrderPiece {
  SupplierName supplier;
  std::string order_ref;
  ItemCode item;
  int copy = 1;
  int position = 1;  ///< within the line
  PatientRef patient;
  std::optional<Side> side;
  std::optional<Date> needed_on;
  bool promised = false;            ///< a reservation stood when it was ordered, or when it came
  std::optional<Date> put_away_on;  ///< empty until it has come

  friend bool operator==(const OrderPiece&, const OrderPiece&) = default;
};

/// An order as it was sent, never changed afterwards.
struct OrderRevision {
  SupplierName supplier;
  std::string order_ref;
  int revision = 1;
  Date made_on;
  std::string made_by;
  std::string why;
  Date ordered_on;
  std::optional<Date> expected_by;
  std::string account;
  std::string clinic_name;
  std::string ship_to;

  friend bool operator==(const OrderRevision&, const OrderRevision&) = default;
};

struct OrderRevisionLine {
  SupplierName supplier;
  std::string order_ref;
  int revision = 1;
  int position = 1;
  ItemCode item;
  std::string supplier_item;
  std::string description;
  std::string size_label;
  int quantity = 0;
  std::optional<Money> unit_cost;
  std::optional<Date> promised_on;
  std::vector<std::string> for_patients;  ///< "P-1 left", "P-2"

  friend bool operator==(const OrderRevisionLine&, const OrderRevisionLine&) = default;
};

}  // namespace sparewell
