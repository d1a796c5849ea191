/// Invented names of people; nobody bears them.
#pragma once

#include <string>

#include "random.hpp"

namespace sparewell::sample {

[[nodiscard]] std::string invented_given_name(Random& random);
[[nodiscard]] std::string invented_family_name(Random& random);

}  // namespace sparewell::sample
