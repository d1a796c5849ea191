#include "desk/finding_rows.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string part_of(const Day& day, const PatientFinding& finding) {
  if (finding.missing) {
    return say("{} (missing)", capitalised(function_words(*finding.missing)));
  }
  if (finding.item.empty()) return "";
  const auto* item = day.index().item(finding.item);
  return item ? fmt::format("{} {}", capitalised(kind_words(*item)), finding.item.text)
              : finding.item.text;
}

/// What was found, short enough to be read down a column.
std::string in_short(const PatientFinding& finding) {
  static const std::map<std::string, const char*, std::less<>> words{
      {"conflict", to_say("Conflict with {}")},
      {"possible_conflict", to_say("Possible conflict with {}")},
      {"not_declared", to_say("Not declared; asked for {}")},
      {"none_known", to_say("No conflict known with {}")},
      {"nothing_recorded", to_say("No sensitivity recorded")},
      {"size_fits", to_say("Fits")},
      {"measurement_old", to_say("Fits by an old measurement")},
      {"size_too_large", to_say("Too large")},
      {"size_too_small", to_say("Too small")},
      {"size_at_edge", to_say("At the edge of the size")},
      {"size_leaving", to_say("About to leave the size")},
      {"sock_sign", to_say("Thicker socks than before")},
      {"size_not_known", to_say("Not known whether it fits")},
      {"thread_differs", to_say("Threads differ")},
      {"thread_not_stated", to_say("Thread not stated")},
      {"liner_not_for_suspension", to_say("Another kind of liner")},
      {"not_in_suspension", to_say("No work in the suspension")},
      {"materials_meet", to_say("Materials to look after")},
      {"function_missing", to_say("Missing")},
      {"recalled", to_say("Lot recalled")},
      {"lot_in_quarantine", to_say("Lot in quarantine")}};
  const auto found = words.find(finding.finding.key);
  if (found == words.end()) return shown_topic(finding.topic);
  auto text = fmt::format(fmt::runtime(said(found->second)), finding.substance);
  return finding.decided ? say("{}, decided", text) : text;
}

int count_of(const std::vector<PatientFinding>& findings, care::Gravity gravity) {
  return static_cast<int>(std::ranges::count_if(
      findings, [&](const auto& each) { return each.finding.gravity == gravity; }));
}

}  // namespace

std::vector<Column> finding_columns(FindingsOf of) {
  std::vector<Column> columns{
      {said("Weight"), 9, Align::left, said("Stops: not to be worn unless a clinician decides"), 0},
      {said("Side"), 6, Align::left, "", 0},
      {said("Part"), 20, Align::left, "", 0},
      {said("About"), 11, Align::left, "", 0},
      {said("In short"), 26, Align::left, "", 2},
      {said("What was found"), 30, Align::left, "", 2}};
  if (of == FindingsOf::everyone) {
    columns.insert(columns.begin() + 1, {said("Patient"), 18, Align::left, "", 1});
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
                 {each.side ? shown_word(*each.side) : std::string{}, {}},
                 {part_of(day, each), {}},
                 {shown_topic(each.topic), {}},
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
  const int grave = static_cast<int>(findings.size()) - count_of(findings, care::Gravity::note);
  return grave == 0 ? said("Findings") : say("Findings ({} to look at)", grave);
}

std::string findings_summary(const std::vector<PatientFinding>& findings) {
  if (findings.empty()) {
    return said("The checks found nothing to look at; what is not recorded they cannot find.");
  }
  std::set<PatientRef> patients;
  for (const auto& each : findings) patients.insert(each.patient);
  const int stops = count_of(findings, care::Gravity::stops);
  const int asks = count_of(findings, care::Gravity::ask);
  return say("{} of {}: {}, {}.",
             count_words(static_cast<int>(findings.size()), "finding", "findings"),
             count_words(static_cast<int>(patients.size()), "patient", "patients"),
             say_n("{} stops", "{} stop", static_cast<unsigned long>(stops), number_words(stops)),
             say_n("{} is to be asked about first", "{} are to be asked about first",
                   static_cast<unsigned long>(asks), number_words(asks)));
}

}  // namespace sparewell::desk
