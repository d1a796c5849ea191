/// Spreads an invented clinic over several branches.
#pragma once

#include "clinic/clinic.hpp"

namespace sparewell::sample {

/// Patients in turn to `places` branches, the main store among them. Of every second lot a third of
/// the pieces lie at a branch, so that something is left to move. With one place nothing changes.
void spread_over_branches(Clinic& clinic, int places);

}  // namespace sparewell::sample
