/// The tables of resources/substances, with what the clinic adds to them.
#pragma once

#include <memory>

#include "care/sensitivity.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::desk {

/// As the program is built with them. Throws std::logic_error when a row cannot be used.
[[nodiscard]] const care::SubstanceTable& built_in_substances();

/// These and the clinic's own rows that are not withdrawn by `day`. Never nullptr; may be shared by
/// threads.
[[nodiscard]] std::shared_ptr<const care::SubstanceTable> substances_of(const Clinic& clinic,
                                                                        Date day);

}  // namespace sparewell::desk
