// The reports of billing: every total is the sum of the records, and no name of a patient is in
// them.
#include <cmath>

#include <doctest/doctest.h>

#include "billing/margin.hpp"
#include "billing/unbilled.hpp"
#include "desk/billing/reports.hpp"
#include "desk/sample_books.hpp"
#include "exchange/sheet/sheet_table.hpp"

namespace billing_reports_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

using Sums = std::map<std::string, std::int64_t>;  ///< minor units by currency

exchange::SheetTable read_back(const std::filesystem::path& file, const std::string& sheet) {
  auto table = exchange::read_sheet(file, sheet);
  REQUIRE_MESSAGE(table.has_value(), file.string());
  return *std::move(table);
}

struct Written {
  ClinicFolder folder;
  std::vector<desk::WrittenReport> reports = desk::write_billing_reports(
      sample_clinic(), sample_books(), import_day(), folder.path() / "reports");

  [[nodiscard]] exchange::SheetTable sheet(const std::string& file, const std::string& name) const {
    return read_back(folder.path() / "reports" / file, name);
  }
};

const Written& written() {
  static const Written made;
  return made;
}

/// The totals below the rows, as the formulas' stored values say.
Sums totals_of(const exchange::SheetTable& table, const std::string& label, std::size_t value) {
  Sums sums;
  for (const auto& row : table.rows) {
    const bool is_total = std::ranges::any_of(
        row.cells, [&](const exchange::SheetCell& cell) { return cell.text == label; });
    if (!is_total) continue;
    sums[row.at(value + 1).text] = std::llround(100 * row.at(value).number);
  }
  return sums;
}

Sums sums_of_findings(bool suppliers_alone, bool unbilled_alone) {
  Sums sums;
  for (const auto& item : sample_books().items) {
    const auto& found = item.finding;
    if (!found.money) continue;
    if (unbilled_alone && !billing::is_unbilled(found)) continue;
    const bool is_of_suppliers = found.kind >= billing::FindingKind::received_not_invoiced &&
                                 found.kind <= billing::FindingKind::invoiced_twice;
    if (suppliers_alone && !is_of_suppliers) continue;
    sums[found.money->currency.code] += found.money->minor;
  }
  return sums;
}

/// Charges of pairs less what their pieces cost, worked out piece by piece.
Sums margins_by_hand() {
  const auto& clinic = sample_clinic();
  const ClinicIndex index{clinic};
  Sums sums;
  for (const auto& pair : sample_books().claims.pairs) {
    const auto& first = clinic.units[pair.units.front()];
    if (!pair.money) continue;
    std::optional<Money> cost;
    std::optional<Date> came;
    for (const auto& line : clinic.order_lines) {
      const bool counts = line.item == first.item && line.unit_cost && line.received_on &&
                          line.received_quantity > 0 && *line.received_on <= first.issued_on;
      if (!counts || std::pair{came, cost} > std::pair{line.received_on, line.unit_cost}) continue;
      came = line.received_on;
      cost = line.unit_cost;
    }
    if (!cost) cost = index.item(first.item)->unit_cost;
    if (cost->currency != pair.money->currency) continue;
    sums[cost->currency.code] +=
        pair.money->minor - cost->minor * static_cast<std::int64_t>(pair.units.size());
  }
  return sums;
}

}  // namespace

TEST_CASE("what is unbilled in the workbook adds up to the findings") {
  const auto expected = sums_of_findings(false, true);
  CHECK_FALSE(expected.empty());
  CHECK(totals_of(written().sheet("unbilled.xlsx", "By month"), "Total", 4) == expected);
  CHECK(totals_of(written().sheet("unbilled.xlsx", "Parts"), "Total", 7) == expected);
}

TEST_CASE("the findings in the workbook are all findings, and add up") {
  const auto expected = sums_of_findings(false, false);
  const auto table = written().sheet("findings.xlsx", "Findings");
  CHECK(totals_of(table, "Total", 14) == expected);
  CHECK(totals_of(written().sheet("findings.xlsx", "By kind"), "Total", 4) == expected);
  CHECK(written().reports[1].rows == sample_books().items.size());
}

TEST_CASE("margins add up to the charges of the pairs less the cost of their pieces") {
  CHECK(totals_of(written().sheet("margin.xlsx", "By charge"), "Total of known margins", 6) ==
        margins_by_hand());
}

TEST_CASE("the variances of suppliers add up to their findings") {
  const auto table = written().sheet("supplier-variances.xlsx", "Suppliers");
  CHECK(totals_of(table, "Total", 7) == sums_of_findings(true, false));
}

TEST_CASE("no report has a patient's name in it") {
  const auto& clinic = sample_clinic();
  std::set<std::string> names;
  for (const auto& patient : clinic.patients) {
    if (patient.family_name.size() > 3) names.insert(patient.family_name);
  }
  REQUIRE(names.size() > 50);
  for (const auto& [file, sheet] : {std::pair{"unbilled.xlsx", "Parts"},
                                    {"findings.xlsx", "Findings"},
                                    {"findings.xlsx", "In words"},
                                    {"findings.xlsx", "Both sides"},
                                    {"margin.xlsx", "By charge"},
                                    {"supplier-variances.xlsx", "Suppliers"}}) {
    for (const auto& row : written().sheet(file, sheet).rows) {
      for (const auto& cell : row.cells) {
        for (const auto& name : names) {
          if (cell.text.find(name) != std::string::npos) FAIL_CHECK(file, ": ", cell.text);
        }
      }
    }
  }
}

TEST_CASE("a folder that cannot be made is refused in a sentence") {
  CHECK_THROWS_AS((void)desk::write_billing_reports(sample_clinic(), sample_books(), import_day(),
                                                    "/dev/null/reports"),
                  std::runtime_error);
}

}  // namespace billing_reports_test
