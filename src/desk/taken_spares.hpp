/// Taking spare pieces for a patient from the shelf, on paper: nothing is booked.
#pragma once

#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::desk {

/// Takes up to `quantity` pieces that may be used on `last_day`, first expiry first out, from what
/// is left on the shelf: those taken before are no longer there. What is promised to other patients
/// is left for them, and so that they keep what expires soonest; of it `for_others` was taken from
/// `shelf` before. Of what is returned the quantity is the pieces to take.
[[nodiscard]] std::vector<StockLevel> take_spares(std::vector<StockLevel>& shelf,
                                                  const Clinic& clinic, const ItemCode& item,
                                                  const PatientRef& patient, int quantity,
                                                  Date last_day, int for_others = 0);

}  // namespace sparewell::desk
