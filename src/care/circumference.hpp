/// The circumference of a residual limb at one height, by the days on which it was measured.
#pragma once

#include <span>
#include <vector>

#include "clinic/patient.hpp"

namespace sparewell::care {

/// Standard deviation of one reading of a tape about the circumference, as a part of it: the
/// reproducibility index of one observer on legs, 3.3 % within a week (Phlebology 2011;26(1):14-19;
/// no figure for residual limbs by height was at hand), over 1.96 * sqrt 2, as the index is the
/// difference that two readings keep within in 95 of 100 (from memory).
inline constexpr double tape_error = 0.033 / 2.7718;

struct LimbReading {
  Date day;
  double circumference_cm = 0;
  bool interpolated = false;  ///< between measurements of that day above and below the height
};

/// Of every day until `day` on which that side was measured at the height, or both above and below
/// it, in between along a straight line; in order of date. Days that cannot answer are left out,
/// and so are circumferences that are not above 0.
[[nodiscard]] std::vector<LimbReading> readings_at(std::span<const Measurement> measurements,
                                                   const PatientRef& patient, Side side,
                                                   double at_cm, Date day);

}  // namespace sparewell::care
