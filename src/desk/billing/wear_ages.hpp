/// How much parts had been worn when they ended, for claims under a maker's term.
#pragma once

#include <functional>
#include <optional>

#include "clinic/clinic.hpp"
#include "wear/kind_life.hpp"

namespace sparewell::desk {

/// Days of reference use of a unit up to its end, see wear/exposure.hpp; nullopt when the catalogue
/// does not know its item or it was never worn.
using WearAges = std::function<std::optional<double>(const Unit&)>;

/// By a law that was fitted before. `clinic` and `fitted` must outlive the result.
[[nodiscard]] WearAges wear_ages_of(const Clinic& clinic, const wear::ClinicLife& fitted,
                                    Date today);
/// By the law of the clinic's own history, which is fitted when the first age is asked for: that
/// takes a while in a large clinic. `clinic` must outlive the result.
[[nodiscard]] WearAges wear_ages_of(const Clinic& clinic, Date today);

}  // namespace sparewell::desk
