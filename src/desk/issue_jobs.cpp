#include "desk/issue_jobs.hpp"

#include "clinic/say.hpp"
#include "desk/proof_of_delivery.hpp"

namespace sparewell::desk {

Expected<IssueCheck> ask_whether(const ClinicFile& file, const DayPtr& day,
                                 const IssueRequest& request) {
  const auto store = open_store(file);
  const auto snapshot = store->read();
  std::vector<Item> catalogue;
  for (auto& row : snapshot->all<Item>()) catalogue.push_back(std::move(row.record));
  auto question = question_of(catalogue, request, file.today);
  if (!question) return tl::unexpected{question.error()};
  question->expected_days = expected_days(day->assessment(), *question);
  return check_issue(read_for_issue(*snapshot, question->item), *question);
}

Expected<IssueOutcome> hand_over(const ClinicFile& file, const DayPtr& day,
                                 const IssueRequest& request) {
  const auto store = open_store(file);
  const auto expected = [&](const IssueQuestion& question) {
    return expected_days(day->assessment(), question);
  };
  return issue_part(*store, request, file.today, file.today, file.who, expected);
}

Expected<int> write_delivery_sheet(const ClinicFile& file, const std::vector<Unit>& units,
                                   const std::string& path) {
  const auto store = open_store(file);
  return print_delivery_sheet(*store, units, path, file.today, {}, file.who);
}

namespace {

UnitChoice handed_with(const Unit& unit) {
  UnitChoice choice;
  choice.patient = unit.patient.text;
  choice.issued_on = unit.issued_on;
  return choice;
}

}  // namespace

Expected<int> write_sheet_again(const ClinicFile& file, const Unit& unit, const std::string& path) {
  const auto store = open_store(file);
  return print_sheet_again(*store, handed_with(unit), {}, path, file.today, {}, file.who);
}

Expected<int> record_signature(const ClinicFile& file, const Unit& unit,
                               const std::string& signed_on) {
  const auto day = parse_iso_date(signed_on);
  if (!day) return refuse(say("Write the day as 2026-11-25."));
  const auto store = open_store(file);
  auto choice = handed_with(unit);
  auto units = mark_delivered(*store, choice, {}, *day, file.today, file.who);
  if (!units) {
    // What was imported has no sheet of this program; then the chosen part alone is meant.
    choice.item = unit.item.text;
    units = mark_delivered(*store, choice, {}, *day, file.today, file.who);
  }
  if (!units) return tl::unexpected{units.error()};
  return static_cast<int>(units->size());
}

Expected<EndedUnit> end_part(const ClinicFile& file, const UnitEnding& ending) {
  const auto store = open_store(file);
  return end_unit(*store, ending, file.today, file.who);
}

}  // namespace sparewell::desk
