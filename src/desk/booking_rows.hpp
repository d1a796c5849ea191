/// What is booked for visits, in words, with whether it can be served.
#pragma once

#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/serving.hpp"

namespace sparewell::desk {

/// "2 pieces of L1 for 3 Dec 2026 at main store"; "without a day" where there is none.
[[nodiscard]] std::string booking_words(const Reservation& booking);

/// "in stock", "1 in stock, 1 neither in stock nor on order": where its pieces come from.
[[nodiscard]] std::string serving_words(const supply::Serving& serving, Date today);

/// "served" when all lie at its place, "elsewhere", "coming", "late" or "missing", whichever is the
/// worst; for programs.
[[nodiscard]] std::string serving_key(const supply::Serving& serving);

/// What is booked for the patient, the soonest first; for all patients when `patient` is "".
[[nodiscard]] std::vector<supply::Serving> bookings_of(const Clinic& clinic,
                                                       const std::string& patient, Date today);

/// One sentence for each booking of the patient.
[[nodiscard]] std::vector<std::string> booking_sentences(const Clinic& clinic,
                                                         const PatientRef& patient, Date today);

}  // namespace sparewell::desk
