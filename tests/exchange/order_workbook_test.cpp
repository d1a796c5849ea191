#include "exchange/order_workbook.hpp"

#include <array>
#include <cstdio>
#include <fstream>
#include <memory>
#include <stdexcept>

#include <doctest/doctest.h>

#include "exchange/order_made.hpp"

namespace order_workbook_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

std::string output_of(const std::string& command) {
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe{popen(command.c_str(), "r"), pclose};
  REQUIRE(pipe);
  std::string text;
  std::array<char, 4096> piece{};
  while (const std::size_t read = std::fread(piece.data(), 1, piece.size(), pipe.get())) {
    text.append(piece.data(), read);
  }
  return text;
}

/// One file inside the workbook.
std::string part(const std::filesystem::path& workbook, const std::string& name) {
  return output_of("unzip -p '" + workbook.string() + "' " + name);
}

std::string sheet(const std::filesystem::path& workbook) {
  return part(workbook, "xl/worksheets/sheet1.xml");
}

bool holds(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

}  // namespace

TEST_CASE("Line totals and the total are formulas with their values beside them") {
  const auto file = fresh_folder("formulas") / "order.xlsx";
  write_order_workbook(small_order(), file);
  const std::string xml = sheet(file);
  // By hand: 3 * 412.50 = 1237.50; 12 * 19.99 = 239.88; together 1477.38.
  CHECK(holds(xml, "<f>G12*H12</f><v>1237.5</v>"));
  CHECK(holds(xml, "<f>G13*H13</f><v>239.88</v>"));
  CHECK(holds(xml, "<f>SUM(I12:I13)</f><v>1477.38</v>"));
}

TEST_CASE("Quantities, costs and dates are numbers, with a format for the currency") {
  const auto file = fresh_folder("numbers") / "order.xlsx";
  write_order_workbook(small_order(), file);
  const std::string xml = sheet(file);
  CHECK(holds(xml, "<v>412.5</v>"));
  // 2026-11-25 is day 46351 of the spreadsheet calendar (1900 system), 46358 the day expected.
  CHECK(holds(xml, "<v>46351</v>"));
  CHECK(holds(xml, "<v>46358</v>"));
  const std::string styles = part(file, "xl/styles.xml");
  CHECK(holds(styles, "\"#,##0.00\""));
  CHECK(holds(styles, "yyyy-mm-dd"));
}

TEST_CASE("Text that begins like a formula stays text") {
  PurchaseOrder order = small_order();
  order.lines[0].description = "=HYPERLINK(\"http://example.invalid\")";
  order.lines[0].supplier_item = "+1+1";
  order.lines[0].size_label = "-2";
  order.lines[1].item = {"@SUM(1)"};
  const auto file = fresh_folder("text") / "order.xlsx";
  write_order_workbook(order, file);
  const std::string xml = sheet(file);
  CHECK_FALSE(holds(xml, "HYPERLINK"));
  CHECK_FALSE(holds(xml, "hyperlink"));
  const std::string strings = part(file, "xl/sharedStrings.xml");
  for (const char* text : {"=HYPERLINK(", "+1+1", "-2", "@SUM(1)"}) CHECK(holds(strings, text));
}

TEST_CASE("The head names order, supplier, account and address; patients by reference only") {
  const auto file = fresh_folder("head") / "order.xlsx";
  write_order_workbook(small_order(), file);
  const std::string strings = part(file, "xl/sharedStrings.xml");
  for (const char* text :
       {"Purchase order SW-2026-0001", "Example &amp; Sons Supplies", "C-77", "Example Clinic",
        "1 Example Street", "Exampletown", "P0012 left, P0044 left", "left", "Ship to"}) {
    CHECK(holds(strings, text));
  }
  CHECK(holds(part(file, "docProps/core.xml"), "Purchase order SW-2026-0001"));
}

TEST_CASE("The page is one wide, repeats the header row and is numbered") {
  const auto file = fresh_folder("page") / "order.xlsx";
  write_order_workbook(small_order(), file);
  const std::string xml = sheet(file);
  CHECK(holds(xml, "fitToHeight=\"0\""));
  CHECK(holds(xml, "orientation=\"landscape\""));
  CHECK(holds(xml, "state=\"frozen\""));
  CHECK(holds(xml, "Page &amp;P of &amp;N"));
  CHECK(holds(part(file, "xl/workbook.xml"), "Order!$11:$11"));
}

TEST_CASE("A line without a known cost is empty there and said to be missing in the total") {
  PurchaseOrder order = small_order();
  order.lines[1].unit_cost.reset();
  const auto file = fresh_folder("unknown") / "order.xlsx";
  write_order_workbook(order, file);
  const std::string xml = sheet(file);
  CHECK_FALSE(holds(xml, "G13*H13"));
  CHECK(holds(xml, "<f>SUM(I12:I13)</f><v>1237.5</v>"));
  const std::string strings = part(file, "xl/sharedStrings.xml");
  CHECK(holds(strings, "Total of known costs"));
  CHECK(holds(strings, "1 line has no known cost"));
}

TEST_CASE("Each currency has its own total") {
  PurchaseOrder order = small_order();
  order.lines.push_back(line("J-1", 2, 5000, "JPY"));
  const auto file = fresh_folder("currencies") / "order.xlsx";
  write_order_workbook(order, file);
  const std::string xml = sheet(file);
  CHECK(holds(xml, "<f>SUMIF(J12:J14,\"EUR\",I12:I14)</f><v>1477.38</v>"));
  CHECK(holds(xml, "<f>SUMIF(J12:J14,\"JPY\",I12:I14)</f><v>10000</v>"));
  CHECK(holds(part(file, "xl/styles.xml"), "\"#,##0\""));
}

TEST_CASE("Pieces for patients name the reference and the side of each") {
  PurchaseOrder order = small_order();
  order.lines[0].for_patients = {{{"P0012"}, Side::left}, {{"P0044"}, Side::right}};
  const auto file = fresh_folder("sides") / "order.xlsx";
  write_order_workbook(order, file);
  const std::string strings = part(file, "xl/sharedStrings.xml");
  CHECK(holds(strings, "P0012 left, P0044 right"));
  CHECK(holds(strings, "1 left, 1 right"));
}

TEST_CASE("A list without a number says that it is no order") {
  PurchaseOrder order = small_order();
  order.number.clear();
  order.supplier = {};
  const auto file = fresh_folder("none") / order_file_name(order);
  CHECK(file.filename() == "not-ordered.xlsx");
  write_order_workbook(order, file);
  CHECK(holds(part(file, "xl/sharedStrings.xml"), "names no known supplier"));
}

TEST_CASE("File names hold only letters that every file system takes") {
  PurchaseOrder order = small_order();
  CHECK(order_file_name(order) == "SW-2026-0001-Example-Sons-Supplies.xlsx");
  order.supplier.name = {"../../M\xC3\xBCller: <a|b>"};
  CHECK(order_file_name(order) == "SW-2026-0001-M-ller-a-b.xlsx");
  order.supplier.name = {std::string(300, 'x')};
  CHECK(order_file_name(order).size() == 85);
}

TEST_CASE("A file that cannot be written is one sentence and leaves nothing behind") {
  const auto folder = fresh_folder("refused");
  const auto file = folder / "no such folder" / "order.xlsx";
  CHECK_THROWS_AS(write_order_workbook(small_order(), file), std::runtime_error);
  CHECK(std::filesystem::is_empty(folder));
}

TEST_CASE("A failed write leaves the older file as it was") {
  const auto folder = fresh_folder("older");
  const auto file = folder / "order.xlsx";
  std::ofstream{file} << "older";
  PurchaseOrder order = small_order();
  order.lines[0].description = std::string(40000, 'x');  // a cell holds 32767 characters
  CHECK_THROWS_AS(write_order_workbook(order, file), std::runtime_error);
  std::string text;
  std::ifstream{file} >> text;
  CHECK(text == "older");
  CHECK(std::distance(std::filesystem::directory_iterator{folder}, {}) == 1);
}

TEST_CASE("A revision is marked as such, in its sheet and in its file's name") {
  auto order = small_order();
  order.revision = 1;
  CHECK(order_file_name(order) == "SW-2026-0001-revision-1-Example-Sons-Supplies.xlsx");
  order.revision = 2;
  const auto file = fresh_folder("revision") / order_file_name(order);
  write_order_workbook(order, file);
  const auto texts = sheet(file) + part(file, "xl/sharedStrings.xml");
  CHECK(holds(texts, "Revision 2, replaces revision 1"));
}

}  // namespace order_workbook_test
