/// The life of one part of a patient, in words and as it is drawn. A part is a position in
/// Clinic::units.
#pragma once

#include <string>

#include "desk/day.hpp"
#include "desk/life_strip.hpp"

namespace sparewell::desk {

/// "locking liner"; the item code where the catalogue does not know it.
[[nodiscard]] std::string name_of_part(const Day& day, const Unit& unit);
/// "ended 3 Mar 2026, hole", of a unit that has ended.
[[nodiscard]] std::string ended_of_part(const Unit& unit);
/// "always", "in the drawer", "60 %", "1 of 2 in turn": how much of the time it is the one worn.
[[nodiscard]] std::string share_of_part(const Day& day, std::size_t unit);
/// Its life as it is drawn.
[[nodiscard]] StripEntry strip_of_part(const Day& day, std::size_t unit);

}  // namespace sparewell::desk
