/// Forecasts by one who knows the law but not the future: the best that any forecast can be.
#pragma once

#include <vector>

#include "simulated/law.hpp"
#include "simulated/simulate.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::simulated {

/// The law as a fit would state it; effects of items have no place in it.
[[nodiscard]] wear::ClinicLife true_life(const ClinicLaw& law);

/// What the oracle sees of the patients' usage.
enum class Sight {
  records,  ///< what the clinic wrote down
  truth     ///< every factor as it was
};

/// Every unit in use, in the order of Clinic::units. The oracle knows each shape, scale, effect of
/// factors and items, and theta; of a person only what the history tells. The same as
/// lives_of_units_in_use with true_life, but for effects of items, and for units already in use
/// when the records begin: their wear before then says nothing of the person, because the units
/// that did not last until then are absent.
[[nodiscard]] std::vector<wear::LifeOfUnit> oracle_lives(const SimulatedClinic& made,
                                                         const ClinicLaw& law, Sight sight);

}  // namespace sparewell::simulated
