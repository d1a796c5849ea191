#include "desk/report_words.hpp"

#include <fmt/format.h>

#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

struct Sums {
  int added = 0;
  int changed = 0;
  int unchanged = 0;
  int refused = 0;
};

Sums sums_of(const ImportReport& report) {
  Sums sums;
  for (const auto& file : report.files) {
    sums.added += file.added;
    sums.changed += file.changed;
    sums.unchanged += file.unchanged;
    sums.refused += file.refused;
  }
  return sums;
}

std::string notes_words(const FileReport& file) {
  std::string text = file.refusal;
  for (const auto& note : file.notes) text += (text.empty() ? "" : " ") + note;
  return text;
}

}  // namespace

std::string import_summary(const ImportReport& report) {
  if (report.files.empty()) {
    return "The folder holds none of the files that can be imported, such as catalogue.csv or "
           "patients.csv. Nothing was changed.";
  }
  const auto sums = sums_of(report);
  auto text = count_words(sums.added, "row", "rows") + " added, " +
              count_words(sums.changed, "row", "rows") + " changed, " +
              count_words(sums.unchanged, "row was", "rows were") + " there already.";
  if (report.cancelled) {
    text = "The import was stopped; files finished before that are kept. " + text;
  }
  if (sums.refused > 0) {
    text += fmt::format(" {} refused", count_words(sums.refused, "row was", "rows were"));
    text += report.rejects_folder.empty()
                ? std::string{"."}
                : fmt::format("; correct them in {} and import that folder in turn.",
                              report.rejects_folder.string());
  }
  for (const auto& note : report.notes) text += fmt::format(" {}", note);
  return text;
}

Table import_files(const ImportReport& report) {
  Table table{{{"File", 18, Align::left, ""},
               {"Rows", 8, Align::right, ""},
               {"Added", 8, Align::right, ""},
               {"Changed", 9, Align::right, ""},
               {"Unchanged", 10, Align::right, ""},
               {"Refused", 9, Align::right, ""},
               {"Notes", 60, Align::left, ""}}};
  std::vector<TableRow> rows;
  for (const auto& file : report.files) {
    rows.push_back({file.file,
                    {{file.file, std::nullopt},
                     count_cell(file.rows),
                     count_cell(file.added),
                     count_cell(file.changed),
                     count_cell(file.unchanged),
                     count_cell(file.refused),
                     {notes_words(file), std::nullopt}},
                    "",
                    0,
                    file.refused > 0 || !file.refusal.empty()});
  }
  table.fill(std::move(rows));
  return table;
}

Table import_refusals(const ImportReport& report) {
  Table table{{{"File", 18, Align::left, ""},
               {"Line", 7, Align::right, ""},
               {"Column", 16, Align::left, ""},
               {"Why it was refused, and what to do", 80, Align::left, ""}}};
  std::vector<TableRow> rows;
  for (const auto& refused : report.refused) {
    rows.push_back({std::to_string(rows.size()),
                    {{refused.file, std::nullopt},
                     count_cell(refused.line),
                     {refused.column.empty() ? "whole row" : refused.column, std::nullopt},
                     {refused.reason, std::nullopt}},
                    "",
                    0,
                    false});
  }
  table.fill(std::move(rows));
  return table;
}

}  // namespace sparewell::desk
