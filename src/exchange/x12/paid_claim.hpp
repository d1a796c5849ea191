/// One claim of an 835 while it is read: keeps its sums and makes its entries balance.
#pragma once

#include <string>
#include <vector>

#include "exchange/x12/remittance_835.hpp"

namespace sparewell::exchange {

/// The group and reason of a sum that the file does not explain.
inline constexpr std::string_view unstated_group = "OA";
inline constexpr std::string_view unstated_reason = "unstated";

/// An entry with its adjustments as amounts.
struct PaidEntry {
  PaidRow row;
  std::vector<Adjustment> adjustments;

  /// charge - adjustments - paid: 0 when it balances.
  [[nodiscard]] std::int64_t open() const;
  /// Adds what is open as an adjustment without a reason, and writes the adjustments into the line.
  [[nodiscard]] PaidRow balanced() const;
};

struct PaidClaim {
  PaidEntry whole;  ///< charge and paid as CLP states them
  std::vector<PaidEntry> lines;

  /// The lines, and an entry for what concerns the claim as a whole, beyond them; sentences about
  /// what does not balance go to `differences`.
  [[nodiscard]] std::vector<PaidRow> entries(std::vector<std::string>& differences) const;
};

}  // namespace sparewell::exchange
