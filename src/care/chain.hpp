/// The suspension chain: the functions that a prosthesis needs at the same time.
#pragma once

#include <vector>

#include "care/worn.hpp"

namespace sparewell::care {

/// What some unit must be doing.
enum class Function { locking_liner, cushion_liner, sealing_liner, sleeve, pin, lock, valve, pump };

/// What the suspension needs (common practice, no source). Suction and vacuum seal either by a
/// cushion liner under a sleeve or by a liner with seal; `sealed` says that the patient has the
/// latter. A lanyard holds by its liner and what is catalogued as its lock. Anatomical suspension
/// and belts need none of these parts.
[[nodiscard]] std::vector<Function> functions_of(Suspension suspension, bool sealed);

/// What an item does; nothing for socks and plain liners.
[[nodiscard]] std::vector<Function> functions_of(const Item& item);

/// What is still missing on that side once `item` is handed over. Nothing without a prosthesis.
[[nodiscard]] std::vector<Function> missing_after(const Item& item, const Worn& worn);

}  // namespace sparewell::care
