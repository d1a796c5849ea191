/// Small clinics for the tests of this folder.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "clinic/clinic.hpp"
#include "supply/proposal.hpp"

namespace sparewell::supply::testing {

inline const Date today = make_date(2026, 11, 25);  // a Wednesday

inline Item stocked_item(std::string code, std::string supplier = "Example Supplies") {
  Item item;
  item.code = {std::move(code)};
  item.supplier = {std::move(supplier)};
  item.unit_cost = Money{10000, Currency{"EUR"}};
  item.currency = Currency{"EUR"};
  item.lead_days = 7;
  return item;
}

/// One supplier that is ordered from every Wednesday, and one item "L1" with 7 quoted days.
inline Clinic clinic_with_item() {
  Clinic clinic;
  Supplier supplier;
  supplier.name = {"Example Supplies"};
  supplier.order_days = *parse_order_days("Wed");
  clinic.suppliers.push_back(supplier);
  clinic.items.push_back(stocked_item("L1"));
  return clinic;
}

/// A unit in use that has been worn for `age` days of reference use and is worn every day.
inline void add_unit(Clinic& clinic, std::vector<wear::LifeOfUnit>& lives,
                     const std::string& patient, double age, double shape, double scale,
                     const std::string& item = "L1") {
  Unit unit;
  unit.patient = {patient};
  unit.item = {item};
  unit.issued_on = today - days{static_cast<int>(age)};
  clinic.units.push_back(unit);
  lives.push_back(
      {clinic.units.size() - 1, wear::UnitLife{today, age, shape, scale, {{unit.issued_on, 1.0}}}});
}

/// Many users whose need until a date is Poisson with mean `rate` a day in all: exponential lives.
inline void add_poisson_demand(Clinic& clinic, std::vector<wear::LifeOfUnit>& lives, double rate,
                               int users, const std::string& item = "L1") {
  for (int i = 0; i < users; ++i) {
    add_unit(clinic, lives, fmt::format("P{}", 1000 + i), 10, 1.0, users / rate, item);
  }
}

inline void add_stock(Clinic& clinic, int quantity, std::optional<Date> use_by = std::nullopt,
                      const std::string& place = "main store", const std::string& lot = "A17") {
  clinic.shelf.push_back({{{"L1"}, lot, use_by}, place, quantity});
}

inline OrderLine placed(int quantity, Date ordered_on, const std::string& ref = "O1") {
  OrderLine line;
  line.supplier = {"Example Supplies"};
  line.order_ref = ref;
  line.item = {"L1"};
  line.ordered_on = ordered_on;
  line.quantity = quantity;
  return line;
}

inline OrderLine received_after(int days_taken, int i) {
  OrderLine line = placed(1, today - days{100 + i}, fmt::format("R{}", i));
  line.received_on = line.ordered_on + days{days_taken};
  line.received_quantity = 1;
  return line;
}

inline double poisson(int n, double mean) {
  return std::exp(n * std::log(mean) - mean - std::lgamma(n + 1.0));
}

}  // namespace sparewell::supply::testing
