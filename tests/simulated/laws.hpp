/// The clinics on which forecasts are tried. Scales, shapes and effects differ from the built-in
/// priors on purpose; what each law stresses stands at its function.
#pragma once

#include <cstdint>

#include "simulated/law.hpp"
#include "wear/priors.hpp"

namespace sparewell::simulated {

/// Nothing out of the ordinary: liners, sleeves, valves, locks and socks, theta 0.2.
[[nodiscard]] ClinicLaw ordinary();
/// All patients are alike but for the factors: forecasts must not become too wide.
[[nodiscard]] ClinicLaw no_frailty();
/// Theta 0.8: much must be learned of each person, and new patients are uncertain.
[[nodiscard]] ClinicLaw strong_frailty();
/// Impact sport matters much and is not recorded, activity and sweating are recorded and do
/// nothing, and recorded kneeling hours are off by one hour.
[[nodiscard]] ClinicLaw wrong_factors();
/// Usage changes about every eight months between no kneeling and much, half of the changes of the
/// next months known ahead: past and future wear rates differ.
[[nodiscard]] ClinicLaw changed_jobs();
/// A year and a half of records: with few patients the priors carry the forecasts.
[[nodiscard]] ClinicLaw few_data();
/// About a third of the units end for other reasons than wear: much censoring.
[[nodiscard]] ClinicLaw frequent_other_endings();
/// Ten items of each kind whose lives differ (log scale, standard deviation 0.2).
[[nodiscard]] ClinicLaw item_effects();
/// Three years of supply before two of records: units ended by then are absent, those then in use
/// carry their early issue date.
[[nodiscard]] ClinicLaw left_truncation();
/// Sleeves last four times the prior median with shape 4, liners a third of it with shape 0.9.
[[nodiscard]] ClinicLaw far_from_priors();
/// Every parameter drawn from the beliefs of `priors`: a forecast that carries all uncertainty must
/// cover exactly on average over seeds, however few the data.
[[nodiscard]] ClinicLaw drawn_from(const wear::PriorTable& priors, std::uint64_t seed);

}  // namespace sparewell::simulated
