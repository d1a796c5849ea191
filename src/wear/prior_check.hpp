/// Says whether a table of priors can be used, before anything is computed from it.
#pragma once

#include "clinic/refusal.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// Medians from a tenth of a day to a hundred years, shapes from 0.1 to 20, life ratios from 0.01
/// to 100, variances of the multiplier from a millionth to 10, spreads of items from 0.001 to 2,
/// other spreads above 0 and at most 10, other endings from one in a million years to 100 a year
/// with a weight from 0.01 to a million years. The sentence names kind, material and value.
[[nodiscard]] Expected<void> check_life_prior(const LifePrior& row);
[[nodiscard]] Expected<void> check_factor_prior(const FactorPrior& row);
[[nodiscard]] Expected<void> check_person_prior(const PersonPrior& row);
[[nodiscard]] Expected<void> check_item_prior(const ItemPrior& row);
[[nodiscard]] Expected<void> check_ending_prior(const EndingPrior& row);

/// Complete and sane: every kind has one row without material and at most one for each material,
/// one row for each factor, one for the person, one for the items and one for each reason to end
/// that is not wear; every row is sane and names its source. Refuses with one sentence about the
/// first thing that is not so.
[[nodiscard]] Expected<void> check_priors(const PriorTable& priors);

}  // namespace sparewell::wear
