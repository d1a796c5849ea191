/// An order ready to be written for one supplier: what a workbook shows. It holds no patient names.
#pragma once

#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/supplier.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// One piece meant for one patient: the reference, and the side where it is known.
struct PieceForPatient {
  PatientRef patient;
  std::optional<Side> side;

  friend auto operator<=>(const PieceForPatient&, const PieceForPatient&) = default;
};

struct PurchaseOrderLine {
  std::string supplier_item;
  ItemCode item;
  std::string description;
  std::string size_label;
  int quantity = 0;
  std::optional<Money> unit_cost;             ///< empty when the catalogue gives none
  std::vector<PieceForPatient> for_patients;  ///< empty for stock

  friend bool operator==(const PurchaseOrderLine&, const PurchaseOrderLine&) = default;
};

struct PurchaseOrder {
  std::string number;  ///< never reused
  int revision = 0;    ///< 0: written before it was placed, and not marked
  Supplier supplier;
  std::string clinic_name;
  std::string ship_to;
  Date ordered_on;
  std::optional<Date> expected_by;
  std::vector<PurchaseOrderLine> lines;
};

}  // namespace sparewell
