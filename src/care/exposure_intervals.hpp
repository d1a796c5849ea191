/// What lay against a patient's skin, and when.
#pragma once

#include <string>
#include <vector>

#include "care/day_spans.hpp"
#include "care/sensitivity.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::care {

/// How it is known that a part holds a substance; the surest first.
enum class Basis {
  declared,    ///< the part declares it, or a kind of it
  assumed,     ///< nothing is declared, and the material lets one assume it
  may_contain  ///< what the part holds may contain it
};

/// One substance or one item over time.
struct Exposure {
  std::string name;               ///< the substance, or the item's code
  Basis basis = Basis::declared;  ///< of substances: the surest over all parts
  DaySpans spans;                 ///< worn against the skin, with the days of carry-over
  std::vector<ItemCode> items;    ///< of the parts that hold it, each once
};

struct Exposures {
  /// From the first part on, as long as any part is in use, and the carry-over; today at the
  /// latest.
  DaySpans observed;
  std::vector<Exposure> substances;
  std::vector<Exposure> items;
  /// Worn parts of which nothing is declared and the material says nothing, or whose item the
  /// catalogue does not have: what they hold is not known.
  std::vector<ItemCode> not_known;
};

/// Days after the last contact on which a reaction may still begin because of it. Allergic contact
/// dermatitis appears late: of 403 persons who were patch tested 7.2 % had reactions that showed
/// only after the fourth day (Contact Dermatitis 20 (1989) 127-132). The choice of 4 is ours.
inline constexpr int carry_over_days = 4;

/// Exposures of one patient on one side: of every part that usually touches the skin, from the day
/// after its issue (what is seen on that day was there before) until its end. A part whose share of
/// the time is 0 lies in a drawer and is none; parts that take turns are worn all the time. A
/// substance counts with all groups that it belongs to and with what it may contain; other names of
/// one substance are one.
[[nodiscard]] Exposures exposures_of(const Clinic& clinic, const ClinicIndex& index,
                                     const PatientRef& patient, Side side,
                                     const SubstanceTable& table, Date today);

}  // namespace sparewell::care
