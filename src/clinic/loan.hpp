/// Pieces lent to a patient on trial, until they come back, are kept or are lost.
#pragma once

#include <string>

#include "clinic/stock.hpp"

namespace sparewell {

struct Loan {
  int number = 0;  ///< given out by the clinic file: 1, 2, 3 ...
  PatientRef patient;
  Side side = Side::left;
  Lot lot;
  int quantity = 0;   ///< pieces lent
  std::string place;  ///< where they were taken from
  Date lent_on;
  Date due_on;        ///< the last day of the trial
  int came_back = 0;  ///< pieces
  int kept = 0;       ///< pieces that were then issued to the patient
  int lost = 0;       ///< pieces
  std::string note;

  /// Pieces that are still with the patient on loan.
  [[nodiscard]] int outstanding() const { return quantity - came_back - kept - lost; }
  [[nodiscard]] bool overdue_on(Date day) const { return outstanding() > 0 && due_on < day; }
  friend bool operator==(const Loan&, const Loan&) = default;
};

}  // namespace sparewell
