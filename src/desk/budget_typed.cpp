#include "desk/budget_typed.hpp"

#include "clinic/say.hpp"

namespace sparewell::desk {

Expected<std::optional<Money>> budget_typed(const std::string& text, const Currency& currency) {
  if (text.empty()) return std::nullopt;
  const auto amount = parse_money(text, currency, text.find(',') == text.npos ? '.' : ',');
  if (amount && amount->minor >= 0) return *amount;
  return refuse(
      say("Budget: '{}' is not an amount in {}; write one such as 2500.00, or leave it empty.",
          text, currency.code));
}

}  // namespace sparewell::desk
