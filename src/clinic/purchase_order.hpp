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

struct PurchaseOrderLine {
  std::string supplier_item;
  ItemCode item;
  std::string description;
  std::string size_label;
  std::optional<Side> side;  ///< where it matters: parts ordered for one patient's side
  int quantity = 0;
  std::optional<Money> unit_cost;         ///< empty when the catalogue gives none
  std::vector<PatientRef> for_patients;  ///< references only; empty for stock

  friend bool operator==(const PurchaseOrderLine&, const PurchaseOrderLine&) = default;
};

struct PurchaseOrder {
  std::string number;  ///< never reused
  Supplier supplier;
  std::string clinic_name;
  std::string ship_to;
  Date ordered_on;
  std::optional<Date> expected_by;
  std::vector<PurchaseOrderLine> lines;
};

}  // namespace sparewell
