/// Early endings and suspicious lots in words.
#pragma once

#include <string>

#include "wear/surprises.hpp"

namespace sparewell::desk {

/// "Lot A12 of LS10-28: 6 of 9 units wore out early, 0.8 were to be expected; ...", with how rare
/// that is by chance and how many patients it concerned.
[[nodiscard]] std::string early_endings_words(const wear::EarlyEndings& endings);

/// How many lots and items were looked at, how many were flagged, and what could not be judged.
[[nodiscard]] std::string surprises_summary(const wear::Surprises& surprises);

/// What a flag means and what its absence does not mean; to stand beside every such list.
[[nodiscard]] std::string surprises_caution();

}  // namespace sparewell::desk
