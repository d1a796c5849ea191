/// The pieces of one patient that stand alone, and why.
#pragma once

#include <vector>

#include "billing/patient_case.hpp"
#include "billing/reconcile_claims.hpp"

namespace sparewell::billing {

/// Units by issue, then lines; adds to `leftovers`.
void add_leftovers(const BookRules& rules, const PatientCase& one,
                   std::vector<Leftover>& leftovers);

}  // namespace sparewell::billing
