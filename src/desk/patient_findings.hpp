/// Everything that the checks find about what patients wear: sensitivities, sizes, the suspension
/// chain, recalled lots.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "care/chain_rules.hpp"
#include "desk/issue_check.hpp"

namespace sparewell::desk {

enum class FindingTopic { sensitivity, size, suspension, lot };

struct PatientFinding {
  FindingTopic topic = FindingTopic::sensitivity;
  PatientRef patient;
  std::optional<Side> side;               ///< empty where it is about the patient
  ItemCode item;                          ///< worn; "" where a part is missing
  std::optional<care::Function> missing;  ///< nothing worn does this
  std::string substance;                  ///< recorded, for the topic sensitivity
  bool decided = false;                   ///< a clinician decided about it
  IssueFinding finding;
};

/// "Sensitivity", "Size", "Suspension", "Lot": for files that programs read.
[[nodiscard]] std::string_view topic_words(FindingTopic topic);
/// The same in the language of the program.
[[nodiscard]] std::string shown_topic(FindingTopic topic);

/// Of one patient on `day`, the gravest first, then by side and topic. Parts of one item on one
/// side are told once; what is foreseen of the limb is told too. A patient of whom no sensitivity
/// is recorded has one finding that says so.
[[nodiscard]] std::vector<PatientFinding> findings_of(const Clinic& clinic,
                                                      const PatientRef& patient, Date day);

/// Of every patient, without what is foreseen (see leaving_parts) and without notes, the gravest
/// first and else in the order of the clinic's patients.
[[nodiscard]] std::vector<PatientFinding> findings_of_everyone(const Clinic& clinic, Date day);

}  // namespace sparewell::desk
