/// One physical part in a patient's hands, from issue to its end.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

struct Unit {
  PatientRef patient;
  Side side = Side::left;
  ItemCode item;
  std::string lot;
  std::string serial;
  Date issued_on;
  std::optional<Date> ended_on;  ///< empty while in use
  std::optional<EndReason> end_reason;
  /// Part of the time that this unit is the one worn, 0 to 1; 0 while it lies in a drawer. Empty
  /// when not recorded: then units of one function and side that are in use together alternate.
  std::optional<double> share;
  /// Tells apart units that are alike in everything else, such as socks of one lot: 1, 2, 3 ...
  int copy = 1;

  [[nodiscard]] bool in_use_on(Date day) const {
    return issued_on <= day && (!ended_on || *ended_on > day);
  }
  friend bool operator==(const Unit&, const Unit&) = default;
};

}  // namespace sparewell
