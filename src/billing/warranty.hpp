/// Parts that wore out within the term that their maker gives.
#pragma once

#include <functional>

#include "billing/supplier_match.hpp"

namespace sparewell::billing {

/// warranty_due: units that ended by wear within Item::warranty_days of their issue, at most
/// `claim_days` ago, unless as many pieces of that item and lot were sent back to the supplier
/// since. The maker's term runs in calendar days; `wear_age` gives the days of reference use at the
/// end, which say how much the part was worn, and nullopt where that is not known.
///
/// `money` is the item's unit cost of today: a credit in full, the upper bound; many makers credit
/// less the longer a part was in use (common practice, no source). Empty when no cost is known.
[[nodiscard]] std::vector<BillingFinding> warranty_findings(
    const Clinic& clinic, Date today,
    const std::function<std::optional<double>(const Unit&)>& wear_age,
    const SupplierTerms& terms = {});

}  // namespace sparewell::billing
