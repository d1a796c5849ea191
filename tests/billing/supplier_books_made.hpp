/// Generated books of suppliers: what happened, and what was put in that does not agree.
#pragma once

#include <cstdint>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "billing/supplier_match.hpp"

namespace sparewell::billing::testing {

/// What a finding has to say.
struct PlantedError {
  FindingKind kind = FindingKind::price_differs;
  SupplierName supplier;
  ItemCode item;          ///< empty for freight
  std::string reference;  ///< of the invoice; of the order where there is none
  int quantity = 0;
  std::int64_t minor = 0;  ///< of the money

  friend auto operator<=>(const PlantedError&, const PlantedError&) = default;
};

struct SupplierBooksMade {
  Clinic clinic;
  std::vector<PlantedError> planted;
  int oddities = 0;  ///< that are in order: split deliveries and invoices, wrong references
};

/// Three suppliers, of which two state freight and one is paid in another currency, with four items
/// each, ordered for three years up to `today`.
[[nodiscard]] SupplierBooksMade make_supplier_books(std::uint64_t seed, Date today);

}  // namespace sparewell::billing::testing
