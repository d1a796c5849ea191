#include <doctest/doctest.h>

#include "desk/commands.hpp"
#include "desk/papers/count_sheet.hpp"
#include "desk/papers/month_forecast.hpp"
#include "desk/papers/recall_list.hpp"
#include "desk/papers/stock_list.hpp"
#include "desk/recall_rows.hpp"
#include "desk/sample_day.hpp"
#include "desk/wording.hpp"

namespace lists_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

std::string text_of(const exchange::ListCell& cell) {
  const auto* text = std::get_if<std::string>(&cell);
  return text ? *text : std::string{};
}

/// Every text of a workbook, for what must not be in it.
std::string all_text(const exchange::ListWorkbook& list) {
  std::string joined = list.title;
  for (const auto& sheet : list.sheets) {
    joined += sheet.title + sheet.caution;
    for (const auto& row : sheet.rows) {
      for (const auto& cell : row.cells) joined += text_of(cell) + "|";
    }
  }
  return joined;
}

Clinic stocked_clinic() {
  auto clinic = test_assessment().clinic;
  clinic.items[0].unit_cost = Money{10000, {"EUR"}};
  clinic.shelf = {{{{"A-28"}, "L2", test_today - days{1}}, "main store", 2},
                  {{{"A-28"}, "L1", test_today + days{30}}, "main store", 1},
                  {{{"B-28"}, "", std::nullopt}, "branch", 4},
                  {{{"A-28"}, "L3", test_today + days{900}}, "quarantine shelf", 1}};
  return clinic;
}

RecallNotice notice_made() {
  const auto clinic = test_assessment().clinic;
  supply::ItemRecords records;
  records.units = {clinic.units[1], clinic.units[2]};
  records.patients = clinic.patients;
  records.shelf = {{{{"B-28"}, "", std::nullopt}, "main store", 3}};
  OrderLine line;
  line.supplier = {"Auk"};
  line.order_ref = "PO-1";
  line.item = {"B-28"};
  line.quantity = 2;
  line.ordered_on = test_today;
  records.order_lines = {line};
  return {clinic.items[1], supply::find_recalled({"B-28"}, "", records, test_today)};
}

}  // namespace

TEST_CASE("The stock list goes by place, item and lot, and says in words what may not be used") {
  const auto list = stock_list(stocked_clinic(), test_today);
  const auto& rows = list.sheets[0].rows;
  REQUIRE(rows.size() == 4);
  CHECK(text_of(rows[0].cells[0]) == "branch");
  CHECK(text_of(rows[0].cells[5]) == "No use-by date recorded: look at the part");
  CHECK(std::holds_alternative<std::monostate>(rows[0].cells[8]));
  CHECK(text_of(rows[1].cells[3]) == "L1");
  CHECK(text_of(rows[1].cells[5]) == "Use soon");
  CHECK(text_of(rows[2].cells[5]) == "Expired: do not hand out");
  CHECK(text_of(rows[3].cells[5]) == "In quarantine: do not hand out");
  CHECK(list.sheets[0].total->label == "Total of known costs");
  CHECK(list.sheets[0].closing[0] == "1 row has no known cost and is not in the totals.");
  CHECK(all_text(list).find("Fieldmouse") == std::string::npos);
}

TEST_CASE("A blind count sheet hides what the records say") {
  const auto clinic = stocked_clinic();
  const auto plan = supply::plan_counts(clinic, {}, test_today);
  const auto open = count_sheet(plan, clinic, test_today, false);
  const auto blind = count_sheet(plan, clinic, test_today, true);
  CHECK_FALSE(open.sheets[0].columns[6].hidden);
  CHECK(blind.sheets[0].columns[6].hidden);
  CHECK(blind.sheets[0].rows.size() == 4);
}

TEST_CASE("The forecast by month carries its caution, quantiles and costs") {
  auto assessment = test_assessment();
  assessment.clinic.items[0].unit_cost = Money{10000, {"EUR"}};
  const auto forecast = forecast_by_month(assessment, 2);
  CHECK(month_words(forecast.months[0]) == "rest of Nov 2026");
  CHECK(month_words(forecast.months[2]) == "Jan 2027");
  const auto list = month_forecast_list(forecast, assessment.clinic);
  const auto& sheet = list.sheets[0];
  CHECK(sheet.caution == forecast_caution());
  CHECK(sheet.columns.size() == 2 + 2 * 3 + 4);
  CHECK(sheet.rows.size() == 3);
  CHECK(sheet.closing.back() == "2 items have no known cost and are not in the totals.");
}

TEST_CASE("A recall list has names only when they are asked for") {
  const auto notice = notice_made();
  const auto plain = recall_list(notice, Names::left_out, "Clinic");
  CHECK(all_text(plain).find("Fieldmouse") == std::string::npos);
  CHECK(all_text(plain).find("P-1") != std::string::npos);
  const auto named = recall_list(notice, Names::shown, "Clinic");
  CHECK(all_text(named).find("Ana Fieldmouse") != std::string::npos);
  REQUIRE(plain.sheets.size() == 3);
  CHECK(plain.sheets[0].rows.size() == 2);
  CHECK(text_of(plain.sheets[0].rows[0].cells[2]) == "Has it");
  CHECK(text_of(plain.sheets[0].rows[1].cells[2]) == "Had it until 6 Oct 2026 (hole)");
  for (const auto& sheet : plain.sheets) {
    CHECK(sheet.caution == recall_caution());
    for (const auto& row : sheet.rows) CHECK(row.cells.size() == sheet.columns.size());
  }

  const auto rows = recall_rows(notice, Names::left_out);
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].cells[0].text == "Patient has it");
  CHECK(rows[1].cells[0].text == "Patient had it");
  CHECK(rows[2].cells[4].text == "3 pieces, recalled");
  CHECK(rows[3].cells[0].text == "On order");
  auto items = item_table(test_assessment().clinic.items);
  items.find("b-28");
  CHECK(items.size() == 1);
}

TEST_CASE("Lists, counts, price lists and recalls need an open file") {
  for (const auto command : {Command::stock_list, Command::count_sheet, Command::enter_count,
                             Command::month_forecast, Command::price_list, Command::recall}) {
    CHECK_FALSE(command_spec(command).enabled({}));
    CHECK(command_spec(command).enabled({true, false, false, false}));
    CHECK(command_spec(command).menu == Menu::lists);
  }
}

}  // namespace lists_test
