/// Everything the page "Patients" says about one chosen patient.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/forecast_test.hpp"
#include "desk/life_strip.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

struct PatientCard {
  std::string title;      ///< reference and name
  std::string reference;  ///< for what may leave the clinic: without the name
  std::string visit;      ///< birth date, next visit, and the branch where there are several
  std::string usage;      ///< what is known of use from today on
  std::vector<std::string> prostheses;  ///< one sentence each
  std::vector<std::string> bookings;    ///< one sentence each, with whether it can be served
  std::vector<std::string>
      sensitivities;               ///< one sentence each; one that says so when none is recorded
  bool sensitive = false;          ///< a sensitivity is recorded
  std::vector<TableRow> parts;     ///< for part_columns(); left side first, ended parts last
  std::vector<StripEntry> strips;  ///< in the order of `parts`, with headings; same ids
  int ended = 0;                   ///< parts no longer in use, shown or not
};

/// The caution beside everything that touches health.
[[nodiscard]] std::string care_caution();

/// "Locking liner, left, issued 3 Mar 2026.", when it is expected to be worn out, what else may end
/// it and its use-by date. `unit` is a position in Clinic::units.
[[nodiscard]] std::string life_of_part(const Day& day, std::size_t unit);

/// A default card when there is no such patient.
[[nodiscard]] PatientCard patient_card(const Day& day, const PatientRef& patient, bool with_ended);

/// One line to stand below the forecast of a part: how forecasts of its kind did when tested. ""
/// for a part without a forecast. `id` is that of a row.
[[nodiscard]] std::string trust_of_part(const Day& day, const std::string& id,
                                        const ForecastTestPtr& test);

[[nodiscard]] std::vector<Column> part_columns();

}  // namespace sparewell::desk
