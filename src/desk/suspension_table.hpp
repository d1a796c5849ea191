/// The tables of resources/suspension, as the program is built with them.
#pragma once

#include "care/chain_rules.hpp"

namespace sparewell::desk {

/// Throws std::logic_error when a row of the tables cannot be used.
[[nodiscard]] const care::ChainRules& built_in_chain_rules();

}  // namespace sparewell::desk
