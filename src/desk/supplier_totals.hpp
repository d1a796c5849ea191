/// What a proposal comes to at each supplier.
#pragma once

#include <optional>
#include <vector>

#include "desk/day.hpp"

namespace sparewell::desk {

struct SupplierTotal {
  SupplierName supplier;
  int lines = 0;
  int pieces = 0;
  std::vector<Money> goods;      ///< one amount a currency
  int lines_without_price = 0;   ///< not in `goods`
  std::optional<Money> freight;  ///< charged on this order: zero when the goods reach the limit
  std::optional<Money> short_of_free_freight;  ///< what is missing to reach it
};

/// In the order in which the suppliers first appear in the proposal.
[[nodiscard]] std::vector<SupplierTotal> supplier_totals(const Day& day);

/// Adds an amount to the one of its currency.
void add_amount(std::vector<Money>& amounts, const Money& amount);

}  // namespace sparewell::desk
