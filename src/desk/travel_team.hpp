/// Whether the parts of several patients who travel together last, with spares that they share.
#pragma once

#include <string>
#include <vector>

#include "desk/travel.hpp"

namespace sparewell::desk {

/// One spare part of an item that serves several: the first of them to need it.
struct SharedSpares {
  /// The item, what fails beyond what each has beside, and where the spares come from.
  TravelPart part;
  struct User {
    std::size_t member = 0;
    std::size_t part = 0;  ///< position in the parts of that member
  };
  std::vector<User> users;  ///< two at least
};

struct TeamCheck {
  /// With the spares that each takes for themselves; the chances are of each alone with these and,
  /// as the careful side has it, without the shared ones.
  std::vector<TravelCheck> members;
  std::vector<SharedSpares> shared;
  double without_spares = 0;  ///< chance that nobody is left without a function
  double with_spares = 0;
  bool reached = false;  ///< false also where something is unknown, or a check stops a spare
  bool by_pieces = false;
};

/// Pure. Functions that need the same item, at least two, have common spares: each user's failures
/// less the units that they have beside add up (convolution), and nobody is left without when the
/// sum is at most the number of spares. A user for whom a check stops the item does not share it.
/// Where parts can be had at the place that counts for spares that are not shared alone, which is
/// the careful side. Refuses what check_travel refuses, fewer than two patients, and one named
/// twice.
[[nodiscard]] Expected<TeamCheck> check_team(const Assessment& assessment,
                                             const TravelRequest& request,
                                             const std::vector<std::string>& patients);

/// Failures of one function beyond the units that are carried beside the one that works.
[[nodiscard]] supply::Pmf beyond_carried(const care::SpareNeed& need);

/// The chance that the team's needs last, in one or two sentences.
[[nodiscard]] std::string team_verdict(const TeamCheck& team);
/// What is shared, by whom, how many of it, and where that comes from.
[[nodiscard]] std::string shared_words(const TeamCheck& team, std::size_t shared, Date today);
/// All of it: the verdict, each patient, what is shared, and the cautions.
[[nodiscard]] std::string team_text(const TeamCheck& team, Date today);

}  // namespace sparewell::desk
