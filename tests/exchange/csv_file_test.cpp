#include "exchange/csv_file.hpp"

#include <array>
#include <string>

#include <doctest/doctest.h>

namespace csv_file_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

constexpr std::array<ColumnSpec, 3> columns{
    {{"patient_ref", true}, {"from_date", true}, {"wear_hours", false}}};

Expected<CsvFile> open(std::string bytes, FolderFormat format = {}) {
  return CsvFile::open("usage.csv", std::move(bytes), format, columns);
}

std::string refusal(const std::string& bytes) {
  const auto file = open(bytes);
  return file ? "" : file.error().sentence;
}

}  // namespace

TEST_CASE("Columns are found in any order, letter case and spelling of spaces") {
  const auto file = open("From Date, PATIENT-REF ,\"wear_hours\"\n");
  REQUIRE(file);
  CHECK(file->positions() == std::vector<int>{1, 0, 2});
  CHECK(file->notes().empty());
}

TEST_CASE("Unknown and unnamed columns are noted") {
  const auto file = open("patient_ref,colour,,from_date,,\n");
  REQUIRE(file);
  CHECK(file->notes() == std::vector<std::string>{"The column 'colour' is unknown and is ignored.",
                                                  "Column 3 has no name and is ignored."});
  CHECK(file->header().size() == 4);
}

TEST_CASE("A first line sep= sets the separator and counts as a line") {
  const auto file = open("sep=;\r\npatient_ref;from_date\r\nP1;2026-01-01\r\n");
  REQUIRE(file);
  CHECK(file->separator() == ';');
  int line = 0;
  file->for_each_row([&](const CsvRow& row, double) {
    line = row.line;
    return true;
  });
  CHECK(line == 3);
  CHECK(refusal("sep=x\npatient_ref\n").find("names no usable separator") != std::string::npos);
}

TEST_CASE("A file without rows is taken, a file without a header is not") {
  CHECK(refusal("patient_ref,from_date").empty());
  CHECK(refusal("") == "usage.csv is empty: it has no header row with the column names.");
  CHECK(refusal("\n\n") == "usage.csv is empty: it has no header row with the column names.");
  CHECK(
      refusal("P0001,2026-01-01\nP0002,2026-01-01\n") ==
      "usage.csv has no header row: line 1 names none of its columns, such as patient_ref; put the "
      "column names into the first row.");
}

TEST_CASE("A missing or doubled column refuses the file") {
  CHECK(refusal("patient_ref,wear_hours\n") ==
        "usage.csv lacks the column from_date; add it to the header row.");
  CHECK(refusal("patient_ref,from_date,Patient Ref\n") ==
        "usage.csv has the column Patient Ref twice; remove or rename one.");
}

TEST_CASE("Another separator than the declared one is recognised") {
  CHECK(refusal("patient_ref;from_date;wear_hours\n") ==
        "usage.csv looks separated by ';', not by a comma; declare it with --separator ';'.");
  CHECK(refusal("patient_ref\tfrom_date\n").find("looks separated by 'tab'") != std::string::npos);
}

TEST_CASE("A file that is cut off is refused") {
  CHECK(refusal("patient_ref,from_date\nP0001,2026-01-01\nP0002") ==
        "usage.csv is cut off: its last row (line 3) has 1 of 2 fields and no line end; export the "
        "file again.");
  CHECK(refusal("patient_ref,from_date\nP0001,\"2026-01") ==
        "usage.csv ends inside a quoted field that begins in line 2: it is cut off, or a quotation "
        "mark is missing; correct it or export the file again.");
  CHECK(refusal("patient_ref,from_date\nP0001,2026-01-01").empty());
}

TEST_CASE("A file of refused rows is recognised") {
  const auto file = open("patient_ref,from_date,rejected_line,rejected_reason\n");
  REQUIRE(file);
  CHECK(file->holds_rejects());
  CHECK(file->notes().empty());
}

}  // namespace csv_file_test
