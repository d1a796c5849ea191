/// All books of billing compared with one another.
#pragma once

#include <vector>

#include "billing/payments.hpp"
#include "billing/reconcile_claims.hpp"
#include "billing/supplier_match.hpp"
#include "billing/worklist.hpp"
#include "desk/job.hpp"

namespace sparewell::desk {

struct Books {
  billing::ClaimBooks claims;
  billing::PaymentBooks payments;
  billing::SupplierBooks suppliers;
  std::vector<billing::WorkItem> items;  ///< the findings of all of them, with their answers
};

/// `clinic` as it was known at the end of `today`. Pure, and slow enough for a background job when
/// the clinic is large.
[[nodiscard]] Books compare_books(const Clinic& clinic, Date today);

}  // namespace sparewell::desk
