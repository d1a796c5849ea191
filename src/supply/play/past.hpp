/// The clinic's own past, played again.
#pragma once

#include <functional>

#include "clinic/refusal.hpp"
#include "supply/play/run.hpp"
#include "wear/priors.hpp"

namespace sparewell::supply::play {

/// Told the part of the work that is done, from 0 to 1; false stops it.
using GoesOn = std::function<bool(double done)>;

/// Days after which what is learned of wear is learned anew; forecasts are made on every order day.
inline constexpr int days_between_fits = 91;

/// What was asked for is what was handed out. Our targets on each order day are those that would
/// have been found at its end: from the records as known_at has them, with the fit of at most
/// days_between_fits before. Empty when `goes_on` stopped it. `seed` is for the lead times.
[[nodiscard]] std::optional<Scenario> past_scenario(const Clinic& clinic,
                                                    const wear::PriorTable& priors,
                                                    const Board& board,
                                                    const std::vector<double>& services,
                                                    std::uint64_t seed, const GoesOn& goes_on);

/// Levels that keep nothing, in lists of the right lengths for so many service targets.
[[nodiscard]] Targets empty_targets(const Board& board, std::size_t services);

}  // namespace sparewell::supply::play
