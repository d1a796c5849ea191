#include "desk/line_verdicts.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/substance_table.hpp"

namespace sparewell::desk {

std::string verdicts_sentence(const supply::ProposalLine& line, const Clinic& clinic) {
  const auto item = std::ranges::find(clinic.items, line.item, &Item::code);
  if (item == clinic.items.end() || clinic.sensitivities.empty()) return "";
  const Date day = line.reason.protected_until;
  const auto substances = substances_of(clinic, day);
  std::vector<PatientRef> seen;
  std::vector<std::string> told;
  for (const auto& need : line.reason.needs) {
    if (std::ranges::find(seen, need.patient) != seen.end()) continue;
    seen.push_back(need.patient);
    const auto gravest = care::check_sensitivities(*item, need.patient, clinic.sensitivities,
                                                   *substances, clinic.decisions, day)
                             .front();
    if (gravest.verdict >= Verdict::none_known) continue;
    const auto verdict = shown_word(gravest.verdict);
    const auto& substance = gravest.recorded.substance;
    told.push_back(gravest.decided ? say("{}, {} for {} (decided by a clinician)",
                                         need.patient.text, verdict, substance)
                                   : say("{}, {} for {}", need.patient.text, verdict, substance));
  }
  if (told.empty()) return "";
  return say("To be asked before it is handed over: {}.", fmt::format("{}", fmt::join(told, "; ")));
}

}  // namespace sparewell::desk
