/// One claim of an 835 while it is read: keeps its sums and makes its entries balance.
#pragma once

#include <string>
#include <vector>

#include "exchange/paid_rows.hpp"

namespace sparewell::exchange {

struct PaidClaim {
  PaidEntry whole;  ///< charge and paid as CLP states them
  std::vector<PaidEntry> lines;

  /// The lines, and an entry for what concerns the claim as a whole, beyond them; sentences about
  /// what does not balance go to `differences`.
  [[nodiscard]] std::vector<PaidRow> entries(std::vector<std::string>& differences) const;
};

}  // namespace sparewell::exchange
