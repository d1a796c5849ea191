/// Whether what was fitted for a kind can be true of parts that people wear.
#pragma once

#include <string>

#include "wear/kind_life.hpp"

namespace sparewell::wear {

/// One sentence about an estimate that ran away because the history does not bound it, with what to
/// check; empty when none did. The limits lie far beyond what wear does (common practice, no
/// source): patients whose multiplier has a variance of 10, one more of a factor that makes lives
/// twenty times as short or long, lives of a thousand years.
[[nodiscard]] std::string runaway_note(const KindLife& life);

}  // namespace sparewell::wear
