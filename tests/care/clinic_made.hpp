/// A small invented clinic for the checks before a part is handed over.
#pragma once

#include <doctest/doctest.h>

#include "care/chain_rules.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::care::testing {

inline const Date today = make_date(2026, 11, 25);
inline const PatientRef ana{"P-1"};

/// The rules of resources/suspension that these tests need (common practice, no source).
inline ChainRules made_rules() {
  using F = Function;
  ChainRules rules;
  rules.ways = {
      {Suspension::pin, "pin", {F::locking_liner, F::pin, F::lock}, {}},
      {Suspension::lanyard, "lanyard", {F::locking_liner, F::lock}, {}},
      {Suspension::sleeve, "sleeve", {F::cushion_liner, F::sleeve}, {}},
      {Suspension::suction, "sleeve", {F::cushion_liner, F::sleeve, F::valve}, {}},
      {Suspension::suction, "seal", {F::sealing_liner, F::valve}, {F::sleeve}},
      {Suspension::vacuum, "sleeve", {F::cushion_liner, F::sleeve, F::valve, F::pump}, {}},
      {Suspension::vacuum, "seal", {F::sealing_liner, F::valve, F::pump}, {F::sleeve}},
      {Suspension::belt, "belt", {}, {F::plain_liner, F::cushion_liner, F::sealing_liner}}};
  rules.parts = {{F::locking_liner, Kind::liner, Attachment::locking},
                 {F::cushion_liner, Kind::liner, Attachment::cushion},
                 {F::sealing_liner, Kind::liner, Attachment::seal},
                 {F::plain_liner, Kind::liner, Attachment::none},
                 {F::sleeve, Kind::sleeve, {}},
                 {F::pin, Kind::pin, {}},
                 {F::lock, Kind::lock, {}},
                 {F::valve, Kind::valve, {}},
                 {F::pump, Kind::pump, {}}};
  rules.threaded = {F::locking_liner, F::pin, F::lock};
  return rules;
}
inline const ChainRules rules = made_rules();

inline Item made_item(const std::string& code, Kind kind, Attachment attachment = Attachment::none,
                      const std::string& thread = "") {
  Item item;
  item.code = {code};
  item.kind = kind;
  item.attachment = attachment;
  item.material = Material::silicone;
  item.thread = thread;
  return item;
}

inline Unit made_unit(const std::string& item, int days_ago, const std::string& lot = "A") {
  Unit unit;
  unit.patient = ana;
  unit.item = {item};
  unit.lot = lot;
  unit.issued_on = today - days{days_ago};
  return unit;
}

/// Ana wears a locking liner and its pin on the left; a lock is in the catalogue.
inline Clinic made_clinic(Suspension suspension) {
  Clinic clinic;
  clinic.items = {made_item("LINER", Kind::liner, Attachment::locking, "M10"),
                  made_item("PIN", Kind::pin, Attachment::none, "M10"),
                  made_item("LOCK", Kind::lock, Attachment::none, "m 10"),
                  made_item("SMALL", Kind::lock, Attachment::none, "M8"),
                  made_item("CUSHION", Kind::liner, Attachment::cushion),
                  made_item("SEAL", Kind::liner, Attachment::seal),
                  made_item("SLEEVE", Kind::sleeve),
                  made_item("VALVE", Kind::valve),
                  made_item("PUMP", Kind::pump)};
  clinic.patients = {{ana, "", "", std::nullopt, std::nullopt}};
  Prosthesis prosthesis;
  prosthesis.patient = ana;
  prosthesis.suspension = suspension;
  prosthesis.delivered_on = today - days{100};
  clinic.prostheses = {prosthesis};
  return clinic;
}

}  // namespace sparewell::care::testing
