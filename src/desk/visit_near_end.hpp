/// Which of a patient's parts are near their end at a visit.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"

namespace sparewell::desk {

/// A part is near its end when one in ten like it is worn out within so many days of the visit, or
/// its use-by date lies there (our choice: a visit and a lead time).
inline constexpr days near_end_days{60};

struct NearEnd {
  std::vector<std::size_t> units;  ///< alike: positions in Clinic::units, the first to end first
  std::string words;
};

/// Of the parts in use on that day, what ends first first.
[[nodiscard]] std::vector<NearEnd> parts_near_end(const Day& day, const PatientRef& patient,
                                                  Date visit);

}  // namespace sparewell::desk
