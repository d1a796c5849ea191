/// The program's own English, the same on every computer: "25 Nov 2026", "1,234.50 EUR".
#pragma once

#include <memory>

#include "desk/local_formats.hpp"

namespace sparewell::desk {

[[nodiscard]] std::shared_ptr<const LocalFormats> own_formats();

}  // namespace sparewell::desk
