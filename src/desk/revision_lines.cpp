#include "desk/revision_lines.hpp"

#include <map>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_revisions.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using Lines = std::vector<OrderRevisionLine>;

std::string cost_words(const std::optional<Money>& cost) {
  return cost ? amount_words(*cost) : std::string{said("no price")};
}

std::string patients_words(const std::vector<std::string>& patients) {
  if (patients.empty()) return said("stock");
  std::vector<std::string> shown;
  for (const auto& patient : patients) shown.push_back(shown_piece(patient));
  return list_words(shown);
}

std::string change_words(const OrderRevisionLine& now, const OrderRevisionLine& before) {
  std::vector<std::string> made;
  const auto tell = [&](const std::string& is, const std::string& was) {
    if (is != was) made.push_back(say("{} instead of {}", is, was));
  };
  if (now.quantity != before.quantity) {
    made.push_back(say("{} instead of {}", number_words(now.quantity),
                       count_words(before.quantity, "piece", "pieces")));
  }
  tell(cost_words(now.unit_cost), cost_words(before.unit_cost));
  tell(date_words(now.promised_on, said("no day promised")),
       date_words(before.promised_on, said("no day promised")));
  if (now.for_patients != before.for_patients) {
    made.push_back(say("for {} instead of {}", patients_words(now.for_patients),
                       patients_words(before.for_patients)));
  }
  return fmt::format("{}", fmt::join(made, "; "));
}

}  // namespace

std::vector<RevisionLine> revision_lines(const Lines& lines, const Lines* before) {
  std::vector<RevisionLine> made;
  if (before == nullptr) {
    for (const auto& line : lines) made.push_back({line, false, {}});
    return made;
  }
  std::map<ItemCode, std::vector<const OrderRevisionLine*>> were;
  for (const auto& line : *before) were[line.item].push_back(&line);
  std::map<ItemCode, std::size_t> seen;
  for (const auto& line : lines) {
    const auto& of_item = were[line.item];
    const auto at = seen[line.item]++;
    made.push_back(
        {line, false, at < of_item.size() ? change_words(line, *of_item[at]) : said("added")});
  }
  for (const auto& line : *before) {
    const auto left = seen[line.item];
    if (left > 0) {
      --seen[line.item];
    } else {
      made.push_back({line, true, said("dropped")});
    }
  }
  return made;
}

std::vector<Column> revision_columns() {
  return {{said("Item"), 22, Align::left, "", 2},
          {said("Ordered"), 6, Align::right, ""},
          {said("Unit cost"), 13, Align::right, ""},
          {said("Promised"), 12, Align::left, ""},
          {said("For"), 10, Align::left, said("Patients whom the pieces are for"), 1},
          {said("Changed"), 20, Align::left, said("Against the revision before"), 2}};
}

std::vector<TableRow> revision_rows(const std::vector<RevisionLine>& lines) {
  std::vector<TableRow> made;
  for (const auto& [line, dropped, change] : lines) {
    TableRow row;
    row.id = fmt::format("{}", made.size());
    row.cells = {{fmt::format("{}  {}", line.item.text, line.description), {}},
                 dropped ? Cell{said("none"), 0.0} : count_cell(line.quantity),
                 {cost_words(line.unit_cost), {}},
                 date_cell(line.promised_on, ""),
                 {patients_words(line.for_patients), {}},
                 {change, {}}};
    row.strong = !change.empty();
    made.push_back(std::move(row));
  }
  return made;
}

}  // namespace sparewell::desk
