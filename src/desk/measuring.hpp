/// Recording the circumference of a residual limb.
#pragma once

#include <string>

#include "desk/stock_form.hpp"

namespace sparewell::desk {

/// What a person has measured.
struct MeasuredLimb {
  PatientRef patient;
  Side side = Side::left;
  double at_cm = 0;  ///< height above the distal end of the residual limb
  double circumference_cm = 0;
  Date on;
  bool sure = false;  ///< a jump, or another value than one recorded, is what was meant
};

/// A limb is no thicker, and is not measured higher up (from memory: greatest thighs are below
/// 100 cm).
inline constexpr double most_circumference_cm = 150;
inline constexpr double most_height_cm = 100;
/// A change from the last measurement at that height that is looked at again (our choice).
inline constexpr double greatest_jump = 0.2;

/// Writes the measurement. Refuses with one sentence: a patient that is not known, values out of
/// their range, a day after `today`, and, unless `sure`, a circumference that differs by more than
/// greatest_jump from the last one at that height (or between two heights of that day) or from one
/// recorded for the same day. The latter is then corrected; the change log keeps what it was.
[[nodiscard]] Expected<Booked> record_measurement(store::UnitOfWork& work,
                                                  const MeasuredLimb& measured, Date today);

/// The questions of the window.
[[nodiscard]] StockForm measurement_form(const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
