/// Writing skin reactions down.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "store/port.hpp"

namespace sparewell::desk {

/// Adds the reaction. Refuses an unknown patient, a day after `today`, an end before the beginning,
/// no signs, and a second reaction of the same patient, side and day.
[[nodiscard]] Expected<Reaction> record_reaction(store::UnitOfWork& work, Reaction reaction,
                                                 Date today);

/// Which reaction is meant; an empty day leaves it open.
struct ReactionChoice {
  std::string patient;
  std::optional<Side> side;
  std::optional<Date> began_on;
};

/// Records the last day of a reaction. Refuses when none answers, or several that last.
[[nodiscard]] Expected<Reaction> end_reaction(store::UnitOfWork& work, const ReactionChoice& choice,
                                              Date last_day, Date today);

/// The signs in `text`, with commas or semicolons between them.
[[nodiscard]] std::vector<std::string> signs_in(const std::string& text);

}  // namespace sparewell::desk
