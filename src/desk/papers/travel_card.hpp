/// The card for a trip, from the check of it.
#pragma once

#include <string>

#include "desk/papers/paper_parts.hpp"
#include "desk/travel.hpp"
#include "exchange/documents/travel_card.hpp"

namespace sparewell::desk {

/// What is printed in one language. Names what to pack, what is worn, what the patient reacts to
/// and what to do when a part fails; it gives no chances, which belong to the talk at the clinic.
[[nodiscard]] exchange::TravelCard travel_card(const PaperLanguage& language, const Clinic& clinic,
                                               const TravelCheck& check, Date today, bool name);

/// Writes one page for each language, and returns their number.
[[nodiscard]] Expected<int> print_travel_card(const Clinic& clinic, const TravelCheck& check,
                                              const PatientPaper& how, Date today,
                                              const std::string& path);

}  // namespace sparewell::desk
