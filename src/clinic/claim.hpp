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

/// What a claim is towards earlier ones: the claim frequency codes 1, 7 and 8 of X12 837.
enum class Submission {
  original,
  replacement,  ///< stands in place of an earlier claim as a whole
  reversal      ///< takes an earlier claim, or lines of it, back
};
template <>
std::span<const std::string_view> words<Submission>();

struct ClaimLine {
  std::string claim_ref;
  PatientRef patient;
  std::optional<Side> side;
  Date service_date;
  std::string code;
  std::vector<std::string> modifiers;
  int quantity = 0;
  std::optional<Money> charge;  ///< for the whole line; below zero takes an earlier charge back
  int copy = 1;                 ///< tells apart lines that are alike in everything else
  std::string payer = {};       ///< "" when not recorded
  Submission submission = Submission::original;
  std::string replaces = {};      ///< the earlier claim; "" when it bears the same reference
  std::string line_control = {};  ///< the clinic's number of this line, which a remittance repeats

  /// Takes an earlier charge back, by its submission or by a charge below zero.
  [[nodiscard]] bool takes_back() const {
    return submission == Submission::reversal || (charge && charge->minor < 0);
  }
  friend bool operator==(const ClaimLine&, const ClaimLine&) = default;
};

}  // namespace sparewell
