/// The planted disagreements between parts handed out and lines billed.
#pragma once

#include <vector>

#include "planted.hpp"
#include "random.hpp"

namespace sparewell::sample {

void plant_in_claims(Clinic& clinic, Random& random, Date until, std::vector<Planted>& planted);

}  // namespace sparewell::sample
