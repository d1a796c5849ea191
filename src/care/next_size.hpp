/// Which size of the same part suits a limb that has left the present one.
#pragma once

#include <vector>

#include "clinic/item.hpp"

namespace sparewell::care {

/// The item like `worn` in everything but the size (description apart from the size label, kind,
/// attachment, material, thread, supplier, height at which the size is stated) whose range holds
/// the circumference there. Of several the one whose range lies closest around it, then by item
/// code. nullptr when there is none.
[[nodiscard]] const Item* size_for(const Item& worn, double circumference_cm,
                                   const std::vector<Item>& catalogue);

}  // namespace sparewell::care
