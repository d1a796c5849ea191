/// The tables of resources/substances, as the program is built with them.
#pragma once

#include "care/sensitivity.hpp"

namespace sparewell::desk {

/// Throws std::logic_error when a row of the tables cannot be used.
[[nodiscard]] const care::SubstanceTable& built_in_substances();

}  // namespace sparewell::desk
