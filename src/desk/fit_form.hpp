/// What the window shows of a patient's fit and of how their limbs change.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/limb_chart.hpp"

namespace sparewell::desk {

struct FitShown {
  std::string reference;  ///< of the patient
  std::string words;
  /// To be chosen from; empty where nothing is measured.
  std::vector<LimbCurve> curves;
};

/// To choose the drawing from; one that says so where nothing is measured.
[[nodiscard]] std::vector<std::string> limb_names(const FitShown& shown);

/// "For P-0002  Ana Field. ..."
[[nodiscard]] std::string fit_introduction(const Day& day, const PatientRef& patient);
/// The day that the form begins with, as it is typed.
[[nodiscard]] std::string fit_first_day(const Day& day);
/// By the day that is typed; where it cannot be read, the words say so and the drawing keeps to the
/// first one.
[[nodiscard]] FitShown show_fit(const Day& day, const PatientRef& patient, const std::string& by);

}  // namespace sparewell::desk
