#include "exchange/csv_text.hpp"

#include <string>

#include <doctest/doctest.h>

namespace csv_text_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace std::string_literals;

namespace {

std::string refusal(const std::string& bytes) {
  const auto checked = check_csv_text("issued.csv", bytes);
  return checked ? "" : checked.error().sentence;
}

}  // namespace

TEST_CASE("UTF-8 text is taken, with or without a byte order mark") {
  const auto plain = check_csv_text("issued.csv", "a,b\n\xC3\xA9,1\n");
  REQUIRE(plain);
  CHECK(plain->text == "a,b\n\xC3\xA9,1\n");
  CHECK_FALSE(plain->byte_order_mark);
  const auto marked = check_csv_text("issued.csv",
                                     "\xEF\xBB\xBF"
                                     "a,b\n");
  REQUIRE(marked);
  CHECK(marked->text == "a,b\n");
  CHECK(marked->byte_order_mark);
}

TEST_CASE("A workbook is refused as a workbook, although it is named .csv") {
  CHECK(
      refusal("PK\x03\x04 rest"s) ==
      "issued.csv is a workbook, not CSV text; open it and save it as CSV UTF-8 and import again.");
  CHECK(refusal("\xD0\xCF\x11\xE0 rest"s).find("is a workbook") != std::string::npos);
}

TEST_CASE("UTF-16 is refused, with and without its mark") {
  const std::string sentence =
      "issued.csv is UTF-16 text, not UTF-8; save it as CSV UTF-8 and import again.";
  CHECK(refusal("\xFF\xFE"
                "a\0b\0"s) == sentence);
  CHECK(refusal("\xFE\xFF\0a\0b"s) == sentence);
  CHECK(refusal("a\0b\0c\0"s) == sentence);
}

TEST_CASE("A NUL byte is refused with its line") {
  CHECK(refusal("abc\nabc\r\nab\0c\n"s) ==
        "issued.csv holds a NUL byte in line 3 (byte 12 of the file), so it is a binary or damaged "
        "file; save it as CSV UTF-8 and import again.");
}

TEST_CASE("Bytes that are not UTF-8 are refused with line and byte") {
  // 0xE9 is e-acute in ISO 8859-1 and Windows-1252.
  CHECK(refusal("name\nAm\xE9lie\n"s) ==
        "issued.csv is not UTF-8 text: line 2 holds the byte 0xE9 (byte 8 of the file); save it as "
        "CSV UTF-8 and import again.");
  CHECK_FALSE(refusal("abc\xC3"s).empty());        // cut in a character
  CHECK_FALSE(refusal("\xC0\x80 rest"s).empty());  // overlong form, RFC 3629 section 3
  CHECK_FALSE(refusal("\xED\xA0\x80"s).empty());   // surrogate, RFC 3629 section 3
}

}  // namespace csv_text_test
