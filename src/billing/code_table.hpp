/// Looking up billing codes by day.
#pragma once

#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "clinic/billing_code.hpp"

namespace sparewell::billing {

class CodeTable {
 public:
  /// Later rows go before earlier ones with the same list, code and first day: the clinic's own
  /// come last.
  explicit CodeTable(std::span<const BillingCode> rows);

  /// The row that holds on the day; nullptr when none does.
  [[nodiscard]] const BillingCode* find(const std::string& code, Date day) const;
  /// In any list, on any day.
  [[nodiscard]] bool knows(const std::string& code) const { return by_code_.contains(code); }
  [[nodiscard]] const std::vector<BillingCode>& rows() const { return rows_; }

 private:
  std::vector<BillingCode> rows_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_code_;  ///< the latest first
};

}  // namespace sparewell::billing
