/// Claims and invoices that match what happened, before anything is planted.
#pragma once

#include "clinic/clinic.hpp"

namespace sparewell::sample {

/// One claim a patient and day, one line a side and code.
void write_claims(Clinic& clinic, std::uint64_t seed, Date until);

/// One invoice an order, some days after the last receipt, for what was received.
void write_invoices(Clinic& clinic, std::uint64_t seed, Date until);

}  // namespace sparewell::sample
