/// The tables of resources/billing, as the program is built with them, and the clinic's own.
#pragma once

#include <vector>

#include "billing/code_table.hpp"
#include "billing/rule_book.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::desk {

/// Throws std::logic_error when a row of the table cannot be used; so does the next.
[[nodiscard]] const std::vector<BillingCode>& built_in_codes();
[[nodiscard]] const std::vector<PayerRule>& built_in_payer_rules();

/// The built-in rows and then the clinic's own, which go before them.
[[nodiscard]] billing::CodeTable code_table_of(const Clinic& clinic);
[[nodiscard]] billing::RuleBook rule_book_of(const Clinic& clinic);

}  // namespace sparewell::desk
