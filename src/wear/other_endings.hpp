/// How often parts end for another reason than wear: lost, outgrown, exchanged, recalled.
#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <optional>

#include "clinic/clinic.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// Every reason that is not wear, in the order of the enumeration.
inline constexpr std::array<EndReason, 8> other_reasons{
    EndReason::lost,    EndReason::resized,  EndReason::reaction, EndReason::recall,
    EndReason::upgrade, EndReason::returned, EndReason::deceased, EndReason::other};

/// Position in other_reasons. Precondition: not wear.
[[nodiscard]] std::size_t position_of(EndReason reason);

/// What is known of a constant rate of ending per calendar day in use: Gamma(endings, days), with
/// mean endings / days. Parts still in use after t days without such an ending tell of a lower
/// rate: the chance of none in t days is (days / (days + t))^endings, and the rate seen then is
/// endings / (days + t) (the conjugate posterior of a Poisson rate, a standard result).
struct EndingRate {
  double endings = 0;  ///< 0: never ends so
  double days = 1;     ///< above 0

  [[nodiscard]] double per_day() const { return endings / days; }
  /// t >= 0 days.
  [[nodiscard]] double per_day_after(double t) const { return endings / (days + t); }
  /// -log of the chance of no such ending in t >= 0 days.
  [[nodiscard]] double hazard(double t) const;
};

/// The rates of one kind, one for each of other_reasons; without any by default.
struct OtherEndings {
  std::array<EndingRate, other_reasons.size()> rates{};

  [[nodiscard]] const EndingRate& of(EndReason reason) const { return rates[position_of(reason)]; }
};

/// The posterior of every kind: the prior's Gamma(per_year * weight_years, weight_years) with the
/// endings and calendar days in use of all units of the kind added, as known at the end of `today`.
/// A part that went on the day on which another of its kind and side was worn out, returned,
/// upgraded or for another reason, was exchanged with it and is no such ending.
/// A part in a drawer counts as in use, because it can be lost or outgrown there. An ended life of
/// zero days counts as half a day. A reason without a prior is learned from the records alone.
/// Days before a unit was under observation (see entry.hpp) do not count.
[[nodiscard]] std::map<Kind, OtherEndings> other_endings(
    const Clinic& clinic, const PriorTable& priors, Date today,
    std::optional<Date> records_begin = std::nullopt);

/// Without any rate for a kind that is not there.
[[nodiscard]] OtherEndings of_kind(const std::map<Kind, OtherEndings>& all, Kind kind);

}  // namespace sparewell::wear
