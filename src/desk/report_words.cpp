#include "desk/report_words.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
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
    return said(
        "The folder holds none of the files that can be imported, such as catalogue.csv or "
        "patients.csv. Nothing was changed.");
  }
  const auto sums = sums_of(report);
  const auto grammatical = [](int count) { return static_cast<unsigned long>(count); };
  auto text = fmt::format(
      "{}, {}, {}",
      say_n("{} row added", "{} rows added", grammatical(sums.added), number_words(sums.added)),
      say_n("{} row changed", "{} rows changed", grammatical(sums.changed),
            number_words(sums.changed)),
      say_n("{} row was there already.", "{} rows were there already.", grammatical(sums.unchanged),
            number_words(sums.unchanged)));
  if (report.cancelled) {
    text = said("The import was stopped; files finished before that are kept. ") + text;
  }
  if (sums.refused > 0) {
    text += say_n(" {} row was refused", " {} rows were refused", grammatical(sums.refused),
                  number_words(sums.refused));
    text += report.rejects_folder.empty()
                ? std::string{"."}
                : say("; correct them in {} and import that folder in turn.",
                      report.rejects_folder.string());
  }
  for (const auto& note : report.notes) text += fmt::format(" {}", note);
  return text;
}

Table import_files(const ImportReport& report) {
  Table table{{{said("File"), 18, Align::left, ""},
               {said("Rows"), 8, Align::right, ""},
               {said("Added"), 8, Align::right, ""},
               {said("Changed"), 9, Align::right, ""},
               {said("Unchanged"), 10, Align::right, ""},
               {said("Refused"), 9, Align::right, ""},
               {said("Notes"), 60, Align::left, ""}}};
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
  Table table{{{said("File"), 18, Align::left, ""},
               {said("Line"), 7, Align::right, ""},
               {said("Column"), 16, Align::left, ""},
               {said("Why it was refused, and what to do"), 80, Align::left, ""}}};
  std::vector<TableRow> rows;
  for (const auto& refused : report.refused) {
    rows.push_back({std::to_string(rows.size()),
                    {{refused.file, std::nullopt},
                     count_cell(refused.line),
                     {refused.column.empty() ? said("whole row") : refused.column, std::nullopt},
                     {refused.reason, std::nullopt}},
                    "",
                    0,
                    false});
  }
  table.fill(std::move(rows));
  return table;
}

}  // namespace sparewell::desk
