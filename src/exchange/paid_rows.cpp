#include "exchange/paid_rows.hpp"

namespace sparewell::exchange {

std::int64_t PaidEntry::open() const {
  std::int64_t left = row.line.charge.minor - row.line.paid.minor;
  for (const auto& adjustment : adjustments) left -= adjustment.amount.minor;
  return left;
}

PaidRow PaidEntry::balanced() const {
  PaidRow made = row;
  for (const auto& adjustment : adjustments) {
    made.line.adjustments.push_back(adjustment_text(adjustment));
  }
  if (const auto left = open(); left != 0) {
    made.line.adjustments.push_back(adjustment_text({std::string{unstated_group},
                                                     std::string{unstated_reason},
                                                     {left, row.line.paid.currency},
                                                     {}}));
  }
  return made;
}

}  // namespace sparewell::exchange
