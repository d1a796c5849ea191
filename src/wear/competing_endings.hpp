/// How a unit will end: by wear or for one of the other reasons, whichever comes first.
#pragma once

#include <array>

#include "wear/other_endings.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::wear {

/// Chances that exclude one another and sum to 1.
struct EndingChances {
  double in_use = 1;
  double worn = 0;
  std::array<double, other_reasons.size()> others{};  ///< by position in other_reasons

  [[nodiscard]] double of(EndReason reason) const { return others[position_of(reason)]; }
  [[nodiscard]] double ended_otherwise() const;
};

/// The cumulative incidence of each ending in the `days` days after the end of today, days >= 0:
/// reason r ends the unit with chance
///   integral over t of rate_r(t) * P(not worn out by t) * P(no other ending by t),
/// and wear with what is left of the chance that it ends. Adaptive Simpson sums, each chance within
/// 1e-5.
[[nodiscard]] EndingChances ending_chances(const UnitLife& life, const OtherEndings& others,
                                           double days);

/// How it ends at last, given that it ends within a hundred years: `in_use` is 0, or 1 when nothing
/// ever ends it.
[[nodiscard]] EndingChances eventual_endings(const UnitLife& life, const OtherEndings& others);

}  // namespace sparewell::wear
