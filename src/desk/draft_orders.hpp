/// Orders that were written and not yet sent.
#pragma once

#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::desk {

struct DraftOrder {
  std::string number;
  SupplierName supplier;
  Date written_on;
  int lines = 0;
  int pieces = 0;
};

/// In the order in which they were written.
[[nodiscard]] std::vector<DraftOrder> draft_orders(const Clinic& clinic);

/// "SW-2026-0001, Supplier: 4 lines, 9 pieces, written 25 Nov 2026".
[[nodiscard]] std::string draft_words(const DraftOrder& draft);

}  // namespace sparewell::desk
