/// What the adjustments of a remittance line come to.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "clinic/remittance.hpp"

namespace sparewell::billing {

/// Minor units; charge = paid + contractual + patient + earlier_payer + other.
struct AdjustmentSums {
  std::int64_t contractual = 0;    ///< above the payer's price, which the clinic has agreed to
  std::int64_t patient = 0;        ///< the patient's share
  std::int64_t earlier_payer = 0;  ///< what another payer has settled before
  std::int64_t other = 0;          ///< everything else, such as what was denied
  /// "CO:16" in the order of the line, each once: those of `other` first.
  std::vector<std::string> reasons;
  std::size_t others = 0;  ///< how many of `reasons` belong to `other`

  void add(const AdjustmentSums& more);
};

/// By group and reason (from memory): PR is the patient's; CO with 42 or 45 (above the fee
/// schedule), 131 (agreed discount) or 253 (a cut by law of every payment) is contractual; OA 23 is
/// what another payer settled. Of whatever cannot be read, the difference between charge and
/// payment is `other`.
[[nodiscard]] AdjustmentSums adjustment_sums(const RemittanceLine& line);

}  // namespace sparewell::billing
