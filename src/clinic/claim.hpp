/// What was billed to a payer for a patient.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

struct ClaimLine {
  std::string claim_ref;
  PatientRef patient;
  std::optional<Side> side;
  Date service_date;
  std::string code;
  std::vector<std::string> modifiers;
  int quantity = 0;
  std::optional<Money> charge;  ///< for the whole line
  int copy = 1;                 ///< tells apart lines that are alike in everything else

  friend bool operator==(const ClaimLine&, const ClaimLine&) = default;
};

}  // namespace sparewell
