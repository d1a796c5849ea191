/// The branch that a patient belongs to: which one, and changing it.
#pragma once

#include <string>

#include "clinic/branches.hpp"
#include "desk/stock_form.hpp"

namespace sparewell::desk {

/// "Belongs to North."; "" where the clinic has one store.
[[nodiscard]] std::string branch_words(const Branches& branches, const PatientRef& patient);

/// Records that the patient belongs to the store `place`; "" is the main place. Refuses patients
/// and stores that are not known. Demand and moves between places follow; parts and promised pieces
/// stay as they are.
[[nodiscard]] Expected<Booked> book_patient_place(store::UnitOfWork& work,
                                                  const PatientRef& patient,
                                                  const std::string& place);

[[nodiscard]] StockForm patient_place_form(const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
