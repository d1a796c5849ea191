#include "exchange/sheet/sheet_table.hpp"

#include <doctest/doctest.h>

#include "exchange/xlsx_made.hpp"

namespace sheet_table_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;
using Held = SheetCell::Kind;

namespace {

Expected<SheetTable> read(const std::map<std::string, std::string>& parts,
                          const std::string& sheet = {}, const SheetLimits& limits = {}) {
  return read_sheet_bytes("list.xlsx", zipped(parts), sheet, {}, limits);
}

SheetTable cells(const std::string& sheet, const std::string& book = {}) {
  const auto table = read(workbook_with(sheet, book));
  if (!table) FAIL(table.error().sentence);
  return *table;
}

std::string refusal(const std::string& sheet) {
  const auto table = read(workbook_with(sheet));
  REQUIRE_FALSE(table.has_value());
  CHECK(table.error().sentence.starts_with("list.xlsx "));
  CHECK(table.error().sentence.ends_with('.'));
  return table.error().sentence;
}

}  // namespace

TEST_CASE("Shared and inline texts, numbers, dates, truth values and errors are told apart") {
  const auto table = cells(
      R"(<row r="2"><c r="A2" t="s"><v>0</v></c><c r="B2" t="s"><v>1</v></c><c r="D2" t="inlineStr"><is><t>in &amp; line</t></is></c></row>)"
      R"(<row r="4"><c r="A4"><v>12.5</v></c><c r="B4" s="1"><v>46351</v></c><c r="C4" s="2"><v>46351.75</v></c><c r="D4" s="3"><v>46351</v></c><c r="E4" t="b"><v>1</v></c><c r="F4" t="e"><v>#REF!</v></c><c r="G4" t="d"><v>2026-11-25T00:00:00</v></c><c t="str"><f>1+1</f><v>two</v></c><c><f>1+1</f><v>2</v></c></row>)"
      R"(<row r="5"><c r="A5"/><c r="B5" s="1"/></row>)");
  REQUIRE(table.rows.size() == 2);
  CHECK(table.rows[0].number == 2);
  CHECK(table.rows[0].at(0).text == "Item");
  CHECK(table.rows[0].at(1).text == "Lot");
  CHECK(table.rows[0].at(2).blank());
  CHECK(table.rows[0].at(3).text == "in & line");
  const auto& row = table.rows[1];
  CHECK(row.at(0).kind == Held::number);
  CHECK(row.at(0).text == "12.5");
  // 46351 is 2026-11-25: the day that the order workbook's test names too.
  CHECK(row.at(1).date == make_date(2026, 11, 25));
  CHECK(row.at(2).date == make_date(2026, 11, 25));
  CHECK(row.at(3).kind == Held::number);
  CHECK(row.at(4).text == "yes");
  CHECK(row.at(5).kind == Held::error);
  CHECK(row.at(6).date == make_date(2026, 11, 25));
  CHECK(row.at(7).text == "two");
  CHECK(row.at(8).number == 2);
  CHECK(row.at(99).blank());
}

TEST_CASE("Days before March 1900, the calendar from 1904, prefixes and escapes are understood") {
  // 59 is 1900-02-28 and 61 is 1900-03-01; in the other calendar 44889 is 1462 days later.
  const auto early = cells(R"(<row r="1"><c s="1"><v>59</v></c><c s="1"><v>61</v></c></row>)");
  CHECK(early.rows[0].at(0).date == make_date(1900, 2, 28));
  CHECK(early.rows[0].at(1).date == make_date(1900, 3, 1));
  const auto other =
      cells(R"(<row r="1"><c s="1"><v>44889</v></c></row>)", R"(<workbookPr date1904="1"/>)");
  CHECK(other.rows[0].at(0).date == make_date(2026, 11, 25));
  auto parts = workbook_with("");
  parts["xl/worksheets/sheet1.xml"] =
      R"(<x:worksheet><x:sheetData><x:row r="1"><x:c r="B1" t="s"><x:v>2</x:v></x:c></x:row></x:sheetData></x:worksheet>)";
  const auto prefixed = read(parts);
  REQUIRE(prefixed.has_value());
  CHECK(prefixed->rows[0].at(1).text == "aAb");
}

TEST_CASE("What cannot be read is refused with one sentence") {
  CHECK(refusal(R"(<row r="1"><c r="C1"><f>A1*2</f></c></row>)").find(" C1 ") != std::string::npos);
  CHECK(refusal(R"(<row r="1"><c t="s"><v>99</v></c></row>)").find("damaged") != std::string::npos);
  CHECK(refusal(R"(<row r="1"><c r="XFE1"><v>1</v></c></row>)").find("damaged") !=
        std::string::npos);
  CHECK(refusal(R"(<row r="2"/><row r="0"/>)").find("damaged") != std::string::npos);
  CHECK(refusal(R"(<row r="1"><c><v>one</v></c></row>)").find("damaged") != std::string::npos);

  const auto wrong_sheet = read(workbook_with(""), "Other");
  REQUIRE_FALSE(wrong_sheet.has_value());
  CHECK(wrong_sheet.error().sentence.find("it has 'Prices'") != std::string::npos);

  const auto locked = read_sheet_bytes("list.xlsx", zipped(workbook_with(""), "secret"));
  REQUIRE_FALSE(locked.has_value());
  CHECK(locked.error().sentence.find("password") != std::string::npos);
  const auto compound = read_sheet_bytes("list.xlsx", "\xD0\xCF\x11\xE0 and so on");
  REQUIRE_FALSE(compound.has_value());
  CHECK(compound.error().sentence.find("password") != std::string::npos);
  CHECK_FALSE(read_sheet_bytes("list.xlsx", "PK\x03\x04 nothing").has_value());
  CHECK_FALSE(read({{"hello.txt", "hello"}}).has_value());
  CHECK_FALSE(read_sheet("/nonexistent/list.xlsx").has_value());
}

TEST_CASE("A file that unfolds to more than the limit is refused") {
  SheetLimits limits;
  limits.part_bytes = 1U << 20U;
  auto parts = workbook_with("");
  parts["xl/worksheets/sheet1.xml"] =
      "<worksheet><sheetData/>" + std::string(3U << 20U, ' ') + "</worksheet>";
  CHECK(zipped(parts).size() < 20'000);
  const auto table = read(parts, {}, limits);
  REQUIRE_FALSE(table.has_value());
  CHECK(table.error().sentence == "list.xlsx unfolds to more than 1 MiB; it was not read.");
  // One cell far out makes room for all before it.
  limits.cells = 20'000;
  const auto wide = read(workbook_with(R"(<row r="1"><c r="XFD1"><v>1</v></c></row>)"
                                       R"(<row r="2"><c r="XFD2"><v>1</v></c></row>)"),
                         {}, limits);
  CHECK_FALSE(wide.has_value());
}

TEST_CASE("CSV text becomes the same kind of table") {
  FolderFormat format;
  format.separator = ';';
  const auto table =
      read_sheet_bytes("list.csv", "Item;Price\n\"a;b\"; 12,50 \n\n;x\n", {}, format);
  REQUIRE(table.has_value());
  REQUIRE(table->rows.size() == 3);
  CHECK(table->rows[1].number == 2);
  CHECK(table->rows[1].at(0).text == "a;b");
  CHECK(table->rows[1].at(1).text == "12,50");
  CHECK(table->rows[2].at(0).blank());
  CHECK_FALSE(read_sheet_bytes("list.csv", "a,\"b\nc,d\n").has_value());
  CHECK_FALSE(read_sheet_bytes("list.csv", "a,b\xFF\n").has_value());
  CHECK(column_letters(0) == "A");
  CHECK(column_letters(25) == "Z");
  CHECK(column_letters(26) == "AA");
  CHECK(column_letters(16'383) == "XFD");
}

}  // namespace sheet_table_test
