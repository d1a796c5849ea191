/// The suspension chain: the functions that a prosthesis needs at the same time.
#pragma once

#include <vector>

#include "care/chain_rules.hpp"
#include "care/worn.hpp"

namespace sparewell::care {

/// What all that is worn on a side does.
[[nodiscard]] std::vector<Function> functions_of(const ChainRules& rules, const Worn& worn);

/// What the chain of that side needs, by the way that it is built up now. Nothing without a
/// prosthesis.
[[nodiscard]] std::vector<Function> needed_by(const ChainRules& rules, const Worn& worn);

/// Of these, what nothing worn does.
[[nodiscard]] std::vector<Function> missing_from(const ChainRules& rules, const Worn& worn);

/// What is still missing on that side once `item` is handed over.
[[nodiscard]] std::vector<Function> missing_after(const ChainRules& rules, const Item& item,
                                                  const Worn& worn);

}  // namespace sparewell::care
