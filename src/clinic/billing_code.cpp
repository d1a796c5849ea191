#include "clinic/billing_code.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<PayerRuleKind>() {
  static constexpr std::array<std::string_view, 12> list{
      "at once",           "in period", "initial only", "early", "confirmation", "paper",
      "replacement paper", "included",  "side lines",   "fee",   "answer",       "submit"};
  return list;
}

}  // namespace sparewell
