/// Who pays for whom and on what terms, and how long makers answer for their parts.
#pragma once

#include "clinic/clinic.hpp"

namespace sparewell::sample {

/// Gives each patient a payer and a member number, from their reference alone; adds the payers'
/// rules and the makers' warranty terms.
void agree_on_terms(Clinic& clinic);

/// Writes on each invoice what its supplier charges for freight.
void charge_freight(Clinic& clinic);

}  // namespace sparewell::sample
