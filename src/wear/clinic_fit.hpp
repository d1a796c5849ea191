/// Learns the clinic's own wear from its history: maximum a posteriori, one kind at a time.
#pragma once

#include "clinic/clinic.hpp"
#include "wear/kind_life.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// Maximum a posteriori: each unit worn adds the Weibull density of its wear age at a wear ending,
/// and the chance to have lasted that long otherwise, marginal over the personal multiplier (see
/// life_likelihood.hpp); beliefs are normal in log shape, log median, beta and log theta, items
/// shrink to their material (see kind_posterior.hpp), and lives that were under way when the
/// records begin are left-truncated (see records_begin.hpp). `clinic` is taken as it was known at
/// the end of `today`, whether or not as_of was applied. Never returns NaN. Throws
/// std::invalid_argument for a prior that is not sane; kinds and factors without a prior get a
/// vague one (see kind_prior.hpp).
[[nodiscard]] ClinicLife fit_clinic(const Clinic& clinic, const PriorTable& priors, Date today);

}  // namespace sparewell::wear
