/// What a prosthetist should know of the parts that a patient wears before the patient comes.
#pragma once

#include <string>
#include <vector>

#include "care/gravity.hpp"
#include "desk/day.hpp"

namespace sparewell::desk {

struct VisitFinding {
  std::string key;  ///< stable, for programs: "conflict", "size_too_small", "part_missing" ...
  care::Gravity gravity = care::Gravity::note;
  std::string words;  ///< one or two sentences, with the side
};

/// Conflicts of worn parts with recorded sensitivities, sizes that no longer fit or cannot be told,
/// old measurements, parts that do not go together or are missing in the suspension, parts past
/// their use-by date, parts of suspicious lots, and parts that wore out far too early. The gravest
/// first. An empty list says only that nothing of this is recorded.
[[nodiscard]] std::vector<VisitFinding> visit_findings(const Day& day, const PatientRef& patient,
                                                       Date visit);

/// "Act", "Look", "Note": what a finding asks for at a visit.
[[nodiscard]] std::string visit_gravity_words(care::Gravity gravity);

}  // namespace sparewell::desk
