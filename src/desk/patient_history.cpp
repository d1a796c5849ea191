#include "desk/patient_history.hpp"

#include <algorithm>
#include <array>

#include "clinic/say.hpp"
#include "desk/find_words.hpp"
#include "desk/history/entries.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// In the order of Happening.
constexpr std::array kind_names{to_say("Issued"), to_say("Ended"),        to_say("Measured"),
                                to_say("Use"),    to_say("Sensitivity"),  to_say("Reaction"),
                                to_say("Visit"),  to_say("Trip or loan"), to_say("Claim"),
                                to_say("Paper"),  to_say("Order")};

unsigned mark_of(Happening kind) {
  return 1u << static_cast<unsigned>(kind);
}

}  // namespace

std::vector<HistoryEntry> patient_history(const Day& day, const PatientRef& patient) {
  History history;
  add_parts_history(history, day, patient);
  add_care_history(history, day, patient);
  add_supply_history(history, day, patient);
  add_billing_history(history, day, patient);
  std::ranges::stable_sort(history, std::ranges::greater{}, &HistoryEntry::day);
  return history;
}

std::vector<std::string> history_kinds() {
  std::vector<std::string> made{said("Everything")};
  for (const auto* name : kind_names) made.emplace_back(said(name));
  return made;
}

unsigned history_marks(std::size_t choice) {
  return choice == 0 ? 0 : 1u << (choice - 1);
}

std::vector<Column> history_columns() {
  return {{said("Day"), 12, Align::left, ""},
          {said("Kind"), 13, Align::left, ""},
          {said("Side"), 6, Align::left, ""},
          {said("What happened"), 60, Align::left, "", 1}};
}

std::vector<TableRow> history_rows(const std::vector<HistoryEntry>& history) {
  std::vector<TableRow> rows;
  rows.reserve(history.size());
  for (std::size_t i = 0; i < history.size(); ++i) {
    const auto& entry = history[i];
    const std::string kind = said(kind_names[static_cast<std::size_t>(entry.kind)]);
    const std::string side = entry.side ? shown_word(*entry.side) : std::string{};
    TableRow row;
    row.id = std::to_string(i);
    row.cells = {date_cell(entry.day, said("not recorded")),
                 {kind, std::nullopt},
                 {side, std::nullopt},
                 {entry.words, std::nullopt}};
    row.search = folded(fmt::format("{} {} {} {}", row.cells[0].text, kind, side, entry.words));
    row.marks = mark_of(entry.kind);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string history_count(const Table& table) {
  return table.size() == table.total()
             ? say_n("{} entry", "{} entries", table.total(), table.total())
             : say("{} of {} entries", table.size(), table.total());
}

}  // namespace sparewell::desk
