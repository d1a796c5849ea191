#include "exchange/csv_reader.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

namespace csv_reader_test {

using namespace sparewell::exchange;

namespace {

struct Read {
  std::vector<std::string> rows;  ///< "line:field|field"
  CsvEnd end;
};

Read read(std::string_view text, char separator = ',') {
  Read made;
  made.end = read_csv(text, separator, [&](const CsvRow& row) {
    std::string shown = std::to_string(row.line) + ":";
    if (row.malformed) shown += "malformed " + std::string{row.text};
    for (const auto& field : row.fields) shown += field + "|";
    made.rows.push_back(shown);
    return true;
  });
  return made;
}

using Rows = std::vector<std::string>;

}  // namespace

TEST_CASE("Lines may end with LF, CRLF or CR") {
  const Rows expected{"1:a|b|", "2:c|d|"};
  CHECK(read("a,b\nc,d\n").rows == expected);
  CHECK(read("a,b\r\nc,d\r\n").rows == expected);
  CHECK(read("a,b\rc,d\r").rows == expected);
}

TEST_CASE("A line break inside quotation marks belongs to the field and counts as a line") {
  CHECK(read("a,\"b\nb\r\nb\"\nc,d\n").rows == Rows{"1:a|b\nb\r\nb|", "4:c|d|"});
}

TEST_CASE("Blank lines and rows of empty fields are left out but counted") {
  CHECK(read("a,b\n\n  \n,,\r\n\r\nc,d").rows == Rows{"1:a|b|", "6:c|d|"});
}

TEST_CASE("Spaces around unquoted fields go, spaces inside quotation marks stay") {
  CHECK(read(" a , \" b \" ,\"say \"\"x\"\"\"\n").rows == Rows{"1:a| b |say \"x\"|"});
}

TEST_CASE("Other separators are read") {
  CHECK(read("a;\"b;c\";1,5\n", ';').rows == Rows{"1:a|b;c|1,5|"});
  CHECK(read("a\tb c\t\n", '\t').rows == Rows{"1:a|b c||"});
}

TEST_CASE("A row with a stray quotation mark is given alone, and reading goes on after it") {
  CHECK(read("a,5\" pin\nc,d\n").rows == Rows{"1:malformed a,5\" pin", "2:c|d|"});
  CHECK(read("a,\"b\"x\nc,d\n").rows == Rows{"1:malformed a,\"b\"x", "2:c|d|"});
  CHECK(read("a,\"b\nc,\"d\"\ne,f\n").rows == Rows{"1:malformed a,\"b", "2:c|d|", "3:e|f|"});
}

TEST_CASE("How the text ended is told") {
  CHECK(read("a,b\nc,d").end.without_line_end);
  CHECK_FALSE(read("a,b\nc,d\n").end.without_line_end);
  CHECK(read("a,b\nc,\"d\n\n").end.open_quote_line == 2);
  CHECK(read("a,b\nc,\"d\"").end.open_quote_line == 0);
  CHECK(read("a,b\nc,d\n").end.last_line == 2);
}

TEST_CASE("Reading stops when no more is wanted") {
  int rows = 0;
  read_csv("a\nb\nc\n", ',', [&](const CsvRow&) { return ++rows < 2; });
  CHECK(rows == 2);
}

}  // namespace csv_reader_test
