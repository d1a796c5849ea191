/// Findings of billing as JSON and as lines.
#pragma once

#include <string>

#include "batch/json.hpp"
#include "billing/worklist.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::batch {

/// In the smallest unit of the currency, and its code; null when not known.
[[nodiscard]] Json exact(const std::optional<Money>& money);
[[nodiscard]] Json json_of(const BillingAnswer& answer);
/// With both sides as lines.
[[nodiscard]] Json json_of(const billing::WorkItem& item, const Clinic& clinic);
/// "open", "waiting", "settled".
[[nodiscard]] std::string_view state_key(billing::WorkState state);
/// What it is, both sides, likely cause and what settles it: several lines without a last break.
[[nodiscard]] std::string lines_of(const billing::WorkItem& item, const Clinic& clinic);

}  // namespace sparewell::batch
