// Damaged files are read or refused with one sentence, never crashed on (run under sanitizers too).
#include <random>

#include <doctest/doctest.h>

#include "exchange/csv_text.hpp"
#include "exchange/list_made.hpp"
#include "exchange/order_made.hpp"
#include "exchange/sheet/sheet_table.hpp"
#include "exchange/xlsx_made.hpp"

namespace sheet_fuzz_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

const SheetLimits small{1U << 20U, 4U << 20U, 100'000};

/// True when it was read.
bool survives(const std::string& bytes) {
  const auto table = read_sheet_bytes("list", bytes, {}, {}, small);
  if (!table) {
    CHECK(table.error().sentence.starts_with("list "));
    CHECK(table.error().sentence.ends_with('.'));
    CHECK(table.error().sentence.find('\n') == std::string::npos);
  }
  return table.has_value();
}

std::string workbook_bytes() {
  const auto file = fresh_folder("fuzz") / "list.xlsx";
  write_list_workbook(small_list(), file);
  return *read_bytes(file);
}

std::string mutated(std::string bytes, std::mt19937& random, int changes) {
  for (int i = 0; i < changes; ++i) {
    const auto at = random() % bytes.size();
    switch (random() % 3) {
      case 0:
        bytes[at] = static_cast<char>(random() % 256);
        break;
      case 1:
        bytes.erase(at, random() % 8);
        break;
      default:
        bytes.insert(at, bytes.substr(random() % bytes.size(), random() % 16));
    }
    if (bytes.empty()) bytes = "x";
  }
  return bytes;
}

}  // namespace

TEST_CASE("A workbook that is cut off anywhere is refused") {
  const auto bytes = workbook_bytes();
  REQUIRE(survives(bytes));
  for (std::size_t length = 4; length < bytes.size(); length += 61) {
    CAPTURE(length);
    CHECK_FALSE(survives(bytes.substr(0, length)));
  }
}

TEST_CASE("Workbooks with changed bytes are read or refused") {
  const auto bytes = workbook_bytes();
  std::mt19937 random{20261125};
  int refused = 0;
  for (int i = 0; i < 400; ++i) {
    refused += survives(mutated(bytes, random, 1 + i % 5)) ? 0 : 1;
  }
  CHECK(refused > 50);
}

TEST_CASE("Workbooks with changed parts, whole as zip files, are read or refused") {
  const std::string sheet =
      R"(<row r="2"><c r="A2" t="s"><v>0</v></c><c r="D2" t="inlineStr"><is><t>in</t></is></c></row>)"
      R"(<row r="4"><c r="A4"><v>12.5</v></c><c r="B4" s="1"><v>46351</v></c><c t="str"><f>1</f><v>2</v></c></row>)";
  std::mt19937 random{7};
  int read = 0;
  for (int i = 0; i < 1500; ++i) {
    auto parts = workbook_with(sheet);
    auto part = parts.begin();
    std::advance(part, static_cast<long>(random() % parts.size()));
    part->second = mutated(part->second, random, 1 + i % 4);
    read += survives(zipped(parts)) ? 1 : 0;
  }
  CHECK(read > 50);
}

TEST_CASE("CSV text that is cut off or changed is read or refused") {
  const std::string text =
      "Part No.;\"Description, long\";Price EUR\r\nP1;\"a \"\"soft\"\" liner\";12,50\r\nP2;;8\r\n";
  std::mt19937 random{3};
  for (std::size_t length = 0; length <= text.size(); ++length) survives(text.substr(0, length));
  for (int i = 0; i < 2000; ++i) survives(mutated(text, random, 1 + i % 6));
}

}  // namespace sheet_fuzz_test
