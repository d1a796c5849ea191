/// The words for findings of billing: what it is, why it is likely so, and what settles it.
#pragma once

#include <string>
#include <string_view>

#include "billing/finding.hpp"

namespace sparewell::desk {

/// "Parts and claims", "Claims and payments", "Orders and invoices".
[[nodiscard]] std::string book_words(billing::Book book);
/// "Issued, not billed".
[[nodiscard]] std::string finding_title(billing::FindingKind kind);
/// One or two sentences with both sides, numbers, days and money.
[[nodiscard]] std::string finding_sentence(const billing::BillingFinding& finding);
/// Why it is likely so; "" when the records do not say.
[[nodiscard]] std::string cause_words(const billing::BillingFinding& finding);
/// What would settle it: one sentence.
[[nodiscard]] std::string remedy_words(const billing::BillingFinding& finding);

/// "never_billed": stable, for programs.
[[nodiscard]] std::string_view cause_key(billing::Cause cause);
[[nodiscard]] std::string_view remedy_key(billing::Remedy remedy);
[[nodiscard]] std::string_view book_key(billing::Book book);

}  // namespace sparewell::desk
