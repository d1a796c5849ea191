/// How usage changes the life of parts, in words.
#pragma once

#include <string>
#include <vector>

#include "wear/effects.hpp"

namespace sparewell::desk {

/// "kneeling two hours a day: sleeves last 0.50 times as long (0.41 to 0.60)", or "impact sport: no
/// clear effect on pumps (0.71 to 1.20 times as long)". Compared with none of the factor: with one
/// activity level less, no kneeling, fewer hours of wear, normal sweating, no impact sport.
[[nodiscard]] std::string effect_words(Kind kind, const wear::FactorEffect& effect);

/// What the effects of the kind rest on, in one sentence; says so when it is no experience of the
/// clinic's own. A second sentence says when the estimates are not sound, and why.
[[nodiscard]] std::string effect_grounds(const wear::KindLife& life);

/// What stands against the fit of a kind, one sentence a kind; empty when all fits are sound. To be
/// told wherever something follows from the fits.
[[nodiscard]] std::vector<std::string> fit_notes(const wear::ClinicLife& fitted);

/// How the figures are to be read, for below a list of effects.
[[nodiscard]] std::string effect_caution();

}  // namespace sparewell::desk
