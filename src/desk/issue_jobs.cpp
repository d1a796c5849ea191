#include "desk/issue_jobs.hpp"

#include "desk/proof_of_delivery.hpp"

namespace sparewell::desk {

Expected<IssueCheck> ask_whether(const ClinicFile& file, const IssueRequest& request) {
  const auto store = open_store(file);
  const auto snapshot = store->read();
  std::vector<Item> catalogue;
  for (auto& row : snapshot->all<Item>()) catalogue.push_back(std::move(row.record));
  const auto question = question_of(catalogue, request, file.today);
  if (!question) return tl::unexpected{question.error()};
  return check_issue(read_for_issue(*snapshot, question->item), *question);
}

Expected<IssueOutcome> hand_over(const ClinicFile& file, const IssueRequest& request) {
  const auto store = open_store(file);
  return issue_part(*store, request, file.today, file.today, file.who);
}

Expected<int> write_delivery_sheet(const ClinicFile& file, const std::vector<Unit>& units,
                                   const std::string& path) {
  const auto store = open_store(file);
  return print_delivery_sheet(*store, units, path, file.today, {}, file.who);
}

Expected<EndedUnit> end_part(const ClinicFile& file, const UnitEnding& ending) {
  const auto store = open_store(file);
  return end_unit(*store, ending, file.today, file.who);
}

}  // namespace sparewell::desk
