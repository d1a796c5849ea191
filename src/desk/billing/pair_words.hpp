/// The words for how parts and claims were paired, and why others stand alone.
#pragma once

#include <string>

#include "billing/reconcile_claims.hpp"

namespace sparewell::desk {

/// "2 x P-0012, left: LS10-24 ... <-> CL-26-1: ...: 3 days apart."
[[nodiscard]] std::string pair_words(const Clinic& clinic, const billing::PairedPieces& pair);
/// The record that stands alone, and why.
[[nodiscard]] std::string leftover_words(const Clinic& clinic, const billing::Leftover& left);

}  // namespace sparewell::desk
