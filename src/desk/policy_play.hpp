/// The order policy played beside others, as work in the background and as something to keep.
#pragma once

#include <memory>

#include "desk/day.hpp"
#include "desk/job.hpp"
#include "supply/play/simulate.hpp"

namespace sparewell::desk {

/// A refusal says why nothing could be played.
using PolicyPlay = Expected<supply::play::Simulation>;
/// nullptr: not played.
using PolicyPlayPtr = std::shared_ptr<const PolicyPlay>;

/// Plays the day's clinic at its own service target; nullptr when it was stopped.
[[nodiscard]] PolicyPlayPtr play_policy(const Day& day, const JobControl& control);

/// Whether a play of one clinic holds for the other: what it rests on is the same.
[[nodiscard]] bool same_play(const Clinic& one, const Clinic& other);

}  // namespace sparewell::desk
