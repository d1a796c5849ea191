/// Everything that happened to one patient, as one list.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

enum class Happening {
  parts,    ///< prostheses and parts issued
  endings,  ///< of prostheses and parts
  measurements,
  use,
  sensitivities,  ///< and what was decided about them
  reactions,
  visits,  ///< bookings
  trips,   ///< loans
  claims,  ///< billed and paid
  papers,
  orders
};

struct HistoryEntry {
  Happening kind = Happening::parts;
  std::optional<Date> day;  ///< empty where the records have none
  std::optional<Side> side;
  std::string words;
  std::optional<std::size_t> unit;  ///< position in Clinic::units
};

/// The newest first, what is booked ahead above; entries without a day last.
[[nodiscard]] std::vector<HistoryEntry> patient_history(const Day& day, const PatientRef& patient);

/// To choose a kind from; the first is all of them.
[[nodiscard]] std::vector<std::string> history_kinds();
/// What Table::require needs for such a choice.
[[nodiscard]] unsigned history_marks(std::size_t choice);

[[nodiscard]] std::vector<Column> history_columns();
/// The id of a row is the position of its entry.
[[nodiscard]] std::vector<TableRow> history_rows(const std::vector<HistoryEntry>& history);
/// "12 of 140 entries".
[[nodiscard]] std::string history_count(const Table& table);

}  // namespace sparewell::desk
