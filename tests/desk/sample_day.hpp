/// A small made-up clinic on one day, as the presenters see it.
#pragma once

#include "desk/day.hpp"

namespace sparewell::desk {

inline const Date test_today = make_date(2026, 11, 25);  // a Wednesday

inline Item test_item(const std::string& code, const std::string& supplier) {
  Item item;
  item.code = {code};
  item.description = "Locking liner";
  item.attachment = Attachment::locking;
  item.material = Material::silicone;
  item.size_label = "28";
  item.supplier = {supplier};
  item.currency = {"EUR"};
  item.lead_days = 10;
  return item;
}

inline Unit test_unit(const std::string& patient, Side side, const std::string& item,
                      const std::string& serial, int days_ago) {
  Unit unit;
  unit.patient = {patient};
  unit.side = side;
  unit.item = {item};
  unit.serial = serial;
  unit.lot = "LOT-" + serial;
  unit.issued_on = test_today - days{days_ago};
  return unit;
}

inline supply::ProposalLine test_line(const std::string& item, const std::string& supplier,
                                      int quantity, std::optional<std::int64_t> cents) {
  supply::ProposalLine line;
  line.item = {item};
  line.supplier = {supplier};
  line.place = "main store";
  line.quantity = quantity;
  if (cents) line.unit_cost = Money{*cents, {"EUR"}};
  line.reason.next_order_day = test_today + days{2};
  line.order_by = test_today + days{1};
  line.chance_short = 0.12;
  return line;
}

/// Two suppliers, three items, two patients with parts on both sides.
inline Assessment test_assessment() {
  Assessment day;
  day.today = test_today;
  auto& clinic = day.clinic;
  Supplier tern;
  tern.name = {"Tern"};
  tern.currency = {"EUR"};
  tern.freight = Money{1500, {"EUR"}};
  tern.free_freight_from = Money{50000, {"EUR"}};
  Supplier auk;
  auk.name = {"Auk"};
  clinic.suppliers = {tern, auk};
  clinic.items = {test_item("A-28", "Tern"), test_item("B-28", "Auk"), test_item("C-28", "Auk")};
  Patient first{{"P-1"}, "Ana", "Fieldmouse", std::nullopt, test_today + days{20}};
  Patient second{{"P-2"}, "Bo", "Wren", std::nullopt, std::nullopt};
  clinic.patients = {first, second};
  clinic.units = {test_unit("P-1", Side::right, "A-28", "S1", 100),
                  test_unit("P-1", Side::left, "B-28", "S2", 300),
                  test_unit("P-1", Side::left, "B-28", "S3", 400),
                  test_unit("P-2", Side::left, "C-28", "S4", 10)};
  clinic.units[2].ended_on = test_today - days{50};
  clinic.units[2].end_reason = EndReason::hole;
  for (const std::size_t unit : {0u, 1u, 3u}) {
    const double wear_age = days_between(clinic.units[unit].issued_on, test_today);
    day.lives.push_back({unit, {test_today, wear_age, 3.0, 400.0, {{test_today, 1.0}}}});
  }
  return day;
}

}  // namespace sparewell::desk
