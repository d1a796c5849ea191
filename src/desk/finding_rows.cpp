#include "desk/finding_rows.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "desk/issue_words.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string part_of(const Day& day, const PatientFinding& finding) {
  if (finding.missing) {
    return fmt::format("{} (missing)", capitalised(function_words(*finding.missing)));
  }
  if (finding.item.empty()) return "";
  const auto* item = day.index().item(finding.item);
  return item ? fmt::format("{} {}", capitalised(kind_words(*item)), finding.item.text)
              : finding.item.text;
}

/// What was found, short enough to be read down a column.
std::string in_short(const PatientFinding& finding) {
  static const std::map<std::string, std::string, std::less<>> words{
      {"conflict", "Conflict with {}"},
      {"possible_conflict", "Possible conflict with {}"},
      {"not_declared", "Not declared; asked for {}"},
      {"none_known", "No conflict known with {}"},
      {"nothing_recorded", "No sensitivity recorded"},
      {"size_fits", "Fits"},
      {"measurement_old", "Fits by an old measurement"},
      {"size_too_large", "Too large"},
      {"size_too_small", "Too small"},
      {"size_at_edge", "At the edge of the size"},
      {"size_leaving", "About to leave the size"},
      {"sock_sign", "Thicker socks than before"},
      {"size_not_known", "Not known whether it fits"},
      {"thread_differs", "Threads differ"},
      {"thread_not_stated", "Thread not stated"},
      {"liner_not_for_suspension", "Another kind of liner"},
      {"not_in_suspension", "No work in the suspension"},
      {"materials_meet", "Materials to look after"},
      {"function_missing", "Missing"},
      {"recalled", "Lot recalled"},
      {"lot_in_quarantine", "Lot in quarantine"}};
  const auto found = words.find(finding.finding.key);
  if (found == words.end()) return std::string{topic_words(finding.topic)};
  auto text = fmt::format(fmt::runtime(found->second), finding.substance);
  return finding.decided ? fmt::format("{}, decided", text) : text;
}

int count_of(const std::vector<PatientFinding>& findings, care::Gravity gravity) {
  return static_cast<int>(std::ranges::count_if(
      findings, [&](const auto& each) { return each.finding.gravity == gravity; }));
}

}  // namespace

std::vector<Column> finding_columns(FindingsOf of) {
  std::vector<Column> columns{
      {"Weight", 9, Align::left, "Stops: not to be worn unless a clinician decides", 0},
      {"Side", 6, Align::left, "", 0},
      {"Part", 20, Align::left, "", 0},
      {"About", 11, Align::left, "", 0},
      {"In short", 26, Align::left, "", 2},
      {"What was found", 30, Align::left, "", 2}};
  if (of == FindingsOf::everyone) {
    columns.insert(columns.begin() + 1, {"Patient", 18, Align::left, "", 1});
  }
  return columns;
}

std::vector<TableRow> finding_rows(const Day& day, const std::vector<PatientFinding>& findings,
                                   FindingsOf of) {
  std::vector<TableRow> rows;
  rows.reserve(findings.size());
  for (const auto& each : findings) {
    TableRow row;
    row.id = std::to_string(rows.size());
    row.cells = {{gravity_words(each.finding.gravity), static_cast<double>(each.finding.gravity)},
                 {each.side ? std::string{word(*each.side)} : std::string{}, {}},
                 {part_of(day, each), {}},
                 {std::string{topic_words(each.topic)}, {}},
                 {in_short(each), {}},
                 {each.finding.words, {}}};
    if (of == FindingsOf::everyone) {
      row.cells.insert(row.cells.begin() + 1, Cell{patient_words(day, each.patient), {}});
    }
    std::string searched;
    for (const auto& cell : row.cells) searched += fmt::format("{}\n", cell.text);
    row.search = folded(searched);
    row.strong = each.finding.gravity == care::Gravity::stops;
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string findings_title(const std::vector<PatientFinding>& findings) {
  const int grave =
      static_cast<int>(findings.size()) - count_of(findings, care::Gravity::note);
  return grave == 0 ? "Findings" : fmt::format("Findings ({} to look at)", grave);
}

std::string findings_summary(const std::vector<PatientFinding>& findings) {
  if (findings.empty()) {
    return "The checks found nothing to look at; what is not recorded they cannot find.";
  }
  std::set<PatientRef> patients;
  for (const auto& each : findings) patients.insert(each.patient);
  return fmt::format(
      "{} of {}: {}, {} first.",
      count_words(static_cast<int>(findings.size()), "finding", "findings"),
      count_words(static_cast<int>(patients.size()), "patient", "patients"),
      count_words(count_of(findings, care::Gravity::stops), "stops", "stop"),
      count_words(count_of(findings, care::Gravity::ask), "is to be asked about",
                  "are to be asked about"));
}

}  // namespace sparewell::desk
