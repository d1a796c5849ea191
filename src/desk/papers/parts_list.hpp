/// The list of a patient's parts with how long they may last and their care, to take home.
#pragma once

#include <string>

#include "desk/day.hpp"
#include "desk/papers/paper_parts.hpp"
#include "exchange/documents/parts_list.hpp"

namespace sparewell::desk {

/// What is printed in one language of the parts in use on the day. The patient must be recorded.
[[nodiscard]] exchange::PartsList parts_list(const PaperLanguage& language, const Day& day,
                                             const PatientRef& patient, bool name);

/// Writes one list for each language, and returns the number of pages. Refuses a patient that is
/// not recorded.
[[nodiscard]] Expected<int> print_parts_list(const Day& day, const PatientRef& patient,
                                             const PatientPaper& how, const std::string& path);

}  // namespace sparewell::desk
