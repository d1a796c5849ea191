/// When a patient's skin reactions began.
#pragma once

#include <vector>

#include "care/day_spans.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::care {

/// One reaction, together with all that began while it lasted.
struct Onset {
  Date day;
  Date over;                    ///< the first day on which another one would count for itself
  bool recorded = false;        ///< in the log; false: a part was ended because of a reaction
  std::vector<ItemCode> ended;  ///< parts that were ended for that reason meanwhile
};

/// What begins so many days after an onset, or less, is the same reaction (our choice).
inline constexpr int same_reaction_days = 14;

/// The onsets on one side by the end of `today`, in order. A reaction whose side is not recorded
/// counts on both. The day on which a part is ended because of a reaction is an onset where none is
/// recorded so many days before.
[[nodiscard]] std::vector<Onset> onsets_of(const Clinic& clinic, const PatientRef& patient,
                                           Side side, Date today);

/// The days on which an onset could have been noted: of `observed`, those on which no reaction
/// that had begun earlier went on.
[[nodiscard]] DaySpans days_at_risk(const DaySpans& observed, const std::vector<Onset>& onsets);

}  // namespace sparewell::care
