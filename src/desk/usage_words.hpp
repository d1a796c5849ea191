/// What is recorded about a patient, in sentences for a screen.
#pragma once

#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::desk {

/// What holds on `today`, and changes that are known ahead; says what is not recorded.
[[nodiscard]] std::string usage_words(const Clinic& clinic, const PatientRef& patient, Date today);

/// What one record of use states, in a few words each.
[[nodiscard]] std::vector<std::string> stated_use(const Usage& usage);

/// One sentence a prosthesis, the ones in use first.
[[nodiscard]] std::vector<std::string> prosthesis_words(const Clinic& clinic,
                                                        const PatientRef& patient);

/// One sentence a recorded sensitivity. When none is recorded, one sentence that says that this
/// does not mean that there is none.
[[nodiscard]] std::vector<std::string> sensitivity_words(const Clinic& clinic,
                                                         const PatientRef& patient);

}  // namespace sparewell::desk
