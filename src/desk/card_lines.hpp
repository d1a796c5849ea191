/// The short text above a patient's panes.
#pragma once

#include <string>

#include "desk/patient_card.hpp"

namespace sparewell::desk {

/// Birth date, visit, bookings and use in one short text; a long list of bookings is counted.
[[nodiscard]] std::string short_facts(const PatientCard& card);
/// "Sensitivities: ..." in one text.
[[nodiscard]] std::string sensitivity_line(const PatientCard& card);

}  // namespace sparewell::desk
