/// Amounts as people type them into forms: with a decimal point or a decimal comma.
#pragma once

#include <string>

#include "clinic/money.hpp"

namespace sparewell::desk {

/// "1234.5" or "1234,5", without signs between thousands. Refuses what is no amount, and more
/// decimals than the currency has.
[[nodiscard]] Expected<Money> typed_amount(const std::string& text, const Currency& currency);

}  // namespace sparewell::desk
