/// How one unit was handed to its patient, and its proof of delivery.
#pragma once

#include <optional>
#include <string>

#include "clinic/unit.hpp"

namespace sparewell {

struct Handover {
  // The unit, by what it is known by.
  PatientRef patient;
  Side side = Side::left;
  ItemCode item;
  std::string lot;
  std::string serial;
  Date issued_on;
  int copy = 1;

  std::string overridden;        ///< what stopped it and was overridden, in words; "" when nothing
  std::string override_by;       ///< the clinician who decided that
  std::string override_because;  ///< and why
  /// The booking of the patient that it used up: where and for what day; "" when it used none.
  std::string booked_place;
  std::optional<Date> booked_on;
  std::optional<Date> printed_on;  ///< the delivery sheet was written last on that day
  std::optional<Date> signed_on;   ///< the day on the signed sheet; empty: no proof of delivery

  [[nodiscard]] bool is_of(const Unit& unit) const {
    return patient == unit.patient && side == unit.side && item == unit.item && lot == unit.lot &&
           serial == unit.serial && issued_on == unit.issued_on && copy == unit.copy;
  }
  friend bool operator==(const Handover&, const Handover&) = default;
};

/// That of a unit about which nothing else is recorded yet.
[[nodiscard]] inline Handover handover_of(const Unit& unit) {
  Handover made;
  made.patient = unit.patient;
  made.side = unit.side;
  made.item = unit.item;
  made.lot = unit.lot;
  made.serial = unit.serial;
  made.issued_on = unit.issued_on;
  made.copy = unit.copy;
  return made;
}

}  // namespace sparewell
