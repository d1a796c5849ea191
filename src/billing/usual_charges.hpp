/// What the clinic usually charges for a piece.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "billing/patient_case.hpp"

namespace sparewell::billing {

/// Medians of the charges for a piece in the pairs of the last year that agree in code and day (the
/// lower one of two in the middle). Amounts of several currencies are not mixed: that with the most
/// pairs counts.
class UsualCharges {
 public:
  UsualCharges(const BookRules& rules, std::span<const PatientCase> cases);

  /// Of the item, else of the code; empty when neither is known.
  [[nodiscard]] std::optional<Money> of(const ItemCode& item, const std::string& code) const;

 private:
  std::map<ItemCode, Money> of_item_;
  std::map<std::string, Money> of_code_;
};

/// What a piece is expected to bring: by the payer's own fee on that day, else the usual charge.
[[nodiscard]] std::optional<Money> expected_charge(const BookRules& rules,
                                                   const UsualCharges& usual,
                                                   const std::string& payer, const ItemCode& item,
                                                   const std::string& code, Date day);

}  // namespace sparewell::billing
