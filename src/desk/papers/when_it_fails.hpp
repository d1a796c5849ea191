/// What a patient is told to do when a part fails.
#pragma once

#include <vector>

#include "clinic/clinic.hpp"
#include "desk/papers/paper_language.hpp"
#include "exchange/documents/pictograms.hpp"

namespace sparewell::desk {

/// The usual cautions (common practice, no source), for a leg or an arm as the patient's prostheses
/// on that day are.
[[nodiscard]] std::vector<exchange::PicturedWords> when_it_fails(const PaperLanguage& language,
                                                                 const Clinic& clinic,
                                                                 const PatientRef& patient,
                                                                 Date day);

}  // namespace sparewell::desk
