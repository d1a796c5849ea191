#include "desk/budget_typed.hpp"

#include "clinic/say.hpp"
#include "desk/typed_amounts.hpp"

namespace sparewell::desk {

Expected<std::optional<Money>> budget_typed(const std::string& text, const Currency& currency) {
  if (text.empty()) return std::nullopt;
  const auto amount = typed_amount(text, currency);
  if (amount && amount->minor >= 0) return *amount;
  return refuse(
      say("Budget: '{}' is not an amount in {}; write one such as 2500.00, or leave it empty.",
          text, currency.code));
}

}  // namespace sparewell::desk
