/// Whether an item's size suits the limb as it was last measured.
#pragma once

#include <optional>
#include <span>

#include "care/circumference.hpp"
#include "care/gravity.hpp"
#include "clinic/item.hpp"
#include "clinic/patient.hpp"

namespace sparewell::care {

enum class Fit {
  no_size,       ///< the item has no size range
  not_known,     ///< no measurement answers it; never taken for a fit
  fits,          ///< within the range, its ends included
  edge_smaller,  ///< than the range, by less than fit_tolerance_cm: to be measured again
  edge_larger,   ///< likewise
  limb_smaller,  ///< than the range, by that or more
  limb_larger
};

struct FitCheck {
  Fit fit = Fit::no_size;
  std::optional<double> at_cm;             ///< height at which the item's size is stated
  std::optional<double> circumference_cm;  ///< of the limb there; empty when not known
  std::optional<Date> measured_on;
  bool interpolated = false;  ///< between measurements of that day above and below the height
  bool old = false;           ///< measured more than six months before
};

[[nodiscard]] bool has_size(const Item& item);

/// How far outside the range a reading may be without saying that the limb has left it: one
/// standard deviation of a reading (tape_error), so that a limb at the end of the range is read as
/// outside by that or more once in six times (our choice).
[[nodiscard]] double fit_tolerance_cm(double circumference_cm);

/// A measurement older than six months before `day` no longer vouches for the limb (common
/// practice, no source). The day of the month is kept, or the last day of a shorter month taken.
[[nodiscard]] bool is_old_measurement(Date measured_on, Date day);

/// By the latest day until `day` on which that side was measured at the item's height, or both
/// above and below it; in between the circumference is taken as a straight line. An item without a
/// stated height is not known to fit.
[[nodiscard]] FitCheck check_fit(const Item& item, const PatientRef& patient, Side side,
                                 std::span<const Measurement> measurements, Date day);

/// The same by readings of the side at the item's height, in order of date.
[[nodiscard]] FitCheck check_fit(const Item& item, const std::vector<LimbReading>& readings,
                                 Date day);

/// A size that is not known or at the edge has to be asked for; so does one by an old measurement.
[[nodiscard]] Gravity gravity(const FitCheck& check);

}  // namespace sparewell::care
