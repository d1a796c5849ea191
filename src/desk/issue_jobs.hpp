/// What the page "Patients" does in the clinic file. Each opens a Store of its own and is short
/// enough to be waited for; each throws what the store or the file system throws.
#pragma once

#include <string>
#include <vector>

#include "desk/clinic_jobs.hpp"
#include "desk/issuing.hpp"
#include "desk/unit_ending.hpp"

namespace sparewell::desk {

/// The checks alone: nothing is recorded. `day` knows how long the part should last.
[[nodiscard]] Expected<IssueCheck> ask_whether(const ClinicFile& file, const DayPtr& day,
                                               const IssueRequest& request);

/// Hands the part over on the day of the file.
[[nodiscard]] Expected<IssueOutcome> hand_over(const ClinicFile& file, const DayPtr& day,
                                               const IssueRequest& request);

/// Writes the delivery sheet with the patient's name, and records that it was printed. Returns the
/// number of pages.
[[nodiscard]] Expected<int> write_delivery_sheet(const ClinicFile& file,
                                                 const std::vector<Unit>& units,
                                                 const std::string& path);

/// The sheet of everything that was handed to the unit's patient on its day, again.
[[nodiscard]] Expected<int> write_sheet_again(const ClinicFile& file, const Unit& unit,
                                              const std::string& path);
/// Records the day on the signed sheet of the same parts. Returns how many they are.
[[nodiscard]] Expected<int> record_signature(const ClinicFile& file, const Unit& unit,
                                             const std::string& signed_on);

[[nodiscard]] Expected<EndedUnit> end_part(const ClinicFile& file, const UnitEnding& ending);

}  // namespace sparewell::desk
