/// What the page "Patients" does in the clinic file. Each opens a Store of its own and is short
/// enough to be waited for; each throws what the store or the file system throws.
#pragma once

#include <string>
#include <vector>

#include "desk/clinic_jobs.hpp"
#include "desk/issuing.hpp"
#include "desk/unit_ending.hpp"

namespace sparewell::desk {

/// The checks alone: nothing is recorded.
[[nodiscard]] Expected<IssueCheck> ask_whether(const ClinicFile& file, const IssueRequest& request);

/// Hands the part over on the day of the file.
[[nodiscard]] Expected<IssueOutcome> hand_over(const ClinicFile& file, const IssueRequest& request);

/// Writes the delivery sheet with the patient's name, and records that it was printed. Returns the
/// number of pages.
[[nodiscard]] Expected<int> write_delivery_sheet(const ClinicFile& file,
                                                 const std::vector<Unit>& units,
                                                 const std::string& path);

[[nodiscard]] Expected<EndedUnit> end_part(const ClinicFile& file, const UnitEnding& ending);

}  // namespace sparewell::desk
