/// What a patient's reactions speak for, from what was worn when they began.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/exposure_intervals.hpp"
#include "care/rate_ratio.hpp"
#include "care/reaction_onsets.hpp"
#include "care/suspect_chances.hpp"

namespace sparewell::care {

/// Exposures on the same days, which no log can tell apart.
struct Suspect {
  std::vector<Exposure> alike;  ///< declared before assumed, and by name; at least one
  OnsetCounts counts;
  std::optional<RateRatio> ratio;  ///< with its 95 % interval
  double chance = 0;               ///< that it, or one of those alike, is the cause
};

/// One question, "which substance" or "which item", with its answers.
struct Ranking {
  std::vector<Suspect> suspects;  ///< the likeliest first
  double none = 1;                ///< chance that none of them is the cause
};

struct Suspects {
  PatientRef patient;
  Side side = Side::left;
  std::vector<Onset> onsets;  ///< that can be compared, while parts were in use
  int not_observed = 0;       ///< onsets on days for which no part is recorded
  DaySpans at_risk;           ///< days on which an onset could be noted
  Ranking substances;
  Ranking items;
  std::vector<ItemCode> not_known;    ///< see Exposures
  std::vector<Sensitivity> recorded;  ///< of the patient; the chances do not reckon with them
};

/// Pure. Compares the patient with themselves on one side: onsets while something was worn against
/// those while it was not. Substances and items are two questions, each with a chance that none of
/// its answers is the cause.
[[nodiscard]] Suspects suspects_of(const Clinic& clinic, const PatientRef& patient, Side side,
                                   const SubstanceTable& table, Date today,
                                   const SuspectPrior& prior = {});

/// Sides on which the patient has worn parts, or had a reaction.
[[nodiscard]] std::vector<Side> sides_worn(const Clinic& clinic, const PatientRef& patient);

}  // namespace sparewell::care
