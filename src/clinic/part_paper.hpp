/// The papers behind a part that was handed out, as far as a payer asks for them.
#pragma once

#include <optional>
#include <string>

#include "clinic/unit.hpp"

namespace sparewell {

/// One paper of one unit: the order, the reason of a replacement, its condition, the cost share.
struct PartPaper {
  // The unit, by what it is known by.
  PatientRef patient;
  Side side = Side::left;
  ItemCode item;
  std::string lot;
  std::string serial;
  Date issued_on;
  int copy = 1;

  std::string paper;  ///< what it is: "order", "reason", "condition", "cost share", or other words
  Date dated_on;
  std::string words;     ///< what it says, or where it lies
  std::string noted_by;  ///< who put it on record

  [[nodiscard]] bool is_of(const Unit& unit) const {
    return patient == unit.patient && side == unit.side && item == unit.item && lot == unit.lot &&
           serial == unit.serial && issued_on == unit.issued_on && copy == unit.copy;
  }
  friend bool operator==(const PartPaper&, const PartPaper&) = default;
};

}  // namespace sparewell
