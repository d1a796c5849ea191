#include "exchange/rejects_file.hpp"

#include <array>

#include <doctest/doctest.h>

namespace rejects_file_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

constexpr std::array<ColumnSpec, 3> columns{
    {{"item_code", true}, {"note", false}, {"copy", false}}};

CsvFile open(const char* header) {
  auto file = CsvFile::open("stock.csv", header, {}, columns);
  REQUIRE(file);
  return *file;
}

}  // namespace

TEST_CASE("Refused rows keep their text and say why they were refused") {
  const auto file = open("Item Code,note,colour\n");
  Reject reject;
  reject.line = 7;
  reject.fault = {"note", "is 'odd', correct it"};
  reject.fields = {"=A1", "two\nlines, \"quoted\"", " red"};
  CHECK(rejects_text(file, {reject}) ==
        "Item Code,note,colour,rejected_line,rejected_column,rejected_reason,rejected_text\r\n"
        "=A1,\"two\nlines, \"\"quoted\"\"\",\" red\",7,note,\"is 'odd', correct it\",\r\n");
}

TEST_CASE("A copy number is added where it is known, and a written one is kept") {
  Reject first{2, {"note", "x"}, {"A", "n"}, "", 3};
  CHECK(rejects_text(open("item_code,note\n"), {first}) ==
        "item_code,note,copy,rejected_line,rejected_column,rejected_reason,rejected_text\r\n"
        "A,n,3,2,note,x,\r\n");
  Reject blank{2, {"note", "x"}, {"A", "n", ""}, "", 3};
  Reject written{3, {"note", "x"}, {"A", "n", "5"}, "", 5};
  CHECK(rejects_text(open("item_code,note,copy\n"), {blank, written}) ==
        "item_code,note,copy,rejected_line,rejected_column,rejected_reason,rejected_text\r\n"
        "A,n,3,2,note,x,\r\nA,n,5,3,note,x,\r\n");
}

TEST_CASE("A row that does not fit the header is kept whole and apart") {
  const Reject reject{4, {"", "has 3 fields"}, {}, "A,n,surplus", 0};
  CHECK(rejects_text(open("item_code,note\n"), {reject}) ==
        "item_code,note,rejected_line,rejected_column,rejected_reason,rejected_text\r\n"
        ",,4,,has 3 fields,\"A,n,surplus\"\r\n");
}

TEST_CASE("Byte order mark, separator and earlier reasons are treated as the file had them") {
  const auto file = open("\xEF\xBB\xBFsep=;\nitem_code;rejected_line;note\n");
  const Reject reject{4, {"note", "x"}, {"A", "9", "n;m"}, "", 0};
  CHECK(rejects_text(file, {reject}) ==
        "\xEF\xBB\xBFsep=;\r\n"
        "item_code;note;rejected_line;rejected_column;rejected_reason;rejected_text\r\n"
        "A;\"n;m\";4;note;x;\r\n");
}

}  // namespace rejects_file_test
