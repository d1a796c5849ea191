#include <string>

#include <doctest/doctest.h>

#include "exchange/barcode/gs1_identifiers.hpp"
#include "exchange/barcode/read_label.hpp"

namespace gs1_label_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace std::string_literals;

namespace {

const Date today = make_date(2026, 11, 25);

Label read(const std::string& scan) {
  const auto label = read_label(scan, today);
  CAPTURE(scan);
  REQUIRE_MESSAGE(label, (label ? "" : label.error().sentence));
  return *label;
}

std::string refusal(const std::string& scan) {
  const auto label = read_label(scan, today);
  return label ? "" : label.error().sentence;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("The public example of a device identifier is read, typed and as scanned") {
  // HL7 C-CDA and FHIR material; the element string with its separator is computed from it.
  const auto typed = read("(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234");
  CHECK(typed.gtin == "51022222233336");
  CHECK(typed.made_on == make_date(2014, 12, 31));
  CHECK(typed.use_by == make_date(2015, 7, 7));
  CHECK(typed.lot == "A213B1");
  CHECK(typed.serial == "1234");
  CHECK(typed.doubt.empty());
  const auto scanned =
      "0151022222233336111412311715070710A213B1\x1D"
      "211234"s;
  for (const auto* prefix : {"", "]C1", "]d2", "]Q3", "]e0", "]d2\x1D"}) {
    CAPTURE(prefix);
    CHECK(read(prefix + scanned) == typed);
    CHECK(read(prefix + scanned + "\r\n") == typed);
  }
  CHECK(read(" (01) 51022222233336 (11)141231 (17) 150707 (10)A213B1 (21)1234 ") == typed);
}

TEST_CASE("Other published element strings are read") {
  // HL7 version 2.9, segment PRT.
  const auto hl7 = read("(01)00643169001763(17)160712(21)21A11F4855");
  CHECK(hl7.gtin == "00643169001763");
  CHECK(hl7.use_by == make_date(2016, 7, 12));
  CHECK(hl7.serial == "21A11F4855");
  CHECK(hl7.lot.empty());
  // GS1 General Specifications, figure 7.8.5.1-2: no separator after (01) and (3102).
  const auto weighed = read("01950123456789033102000400");
  CHECK(weighed.gtin == "95012345678903");
  CHECK(weighed.elements.back() == Element{"3102", "000400"});
  // Figure 7.8.5.2-2: (8005) has one length, and needs a separator all the same.
  CHECK(read("8005000365\x1D"
             "10123456")
            .lot == "123456");
  CHECK(holds(refusal("800500036510123456"), "the separator after it is missing"));
}

TEST_CASE("A bare item number is read, of 8, 12, 13 and 14 digits") {
  CHECK(read("6291041500213").gtin == "06291041500213");  // GS1's worked example
  CHECK(read("]E06291041500213\r").gtin == "06291041500213");
  CHECK(read("95012345678903").gtin == "95012345678903");
  CHECK(read("96385074").gtin == "00000096385074");      // from memory: the usual example of EAN-8
  CHECK(read("036000291452").gtin == "00036000291452");  // from memory: the usual one of UPC-A
  CHECK(refusal("6291041500214") ==
        "6291041500214 has the check digit 4, but 3 was expected; scan or type it again.");
}

TEST_CASE(
    "A carton's content and count, a count of variable content, and a single piece's number") {
  const auto carton = read("(02)51022222233336(37)12(10)L7");
  CHECK(carton.gtin == "51022222233336");
  CHECK(carton.quantity == 12);
  CHECK(read("(01)51022222233336(30)7").quantity == 7);
  CHECK(read("(8006)510222222333360102(21)9").gtin == "51022222233336");
  const auto odd = read("(01)51022222233336(37)12");
  CHECK_FALSE(odd.quantity);
  CHECK(holds(odd.doubt, "count the pieces"));
  CHECK(holds(refusal("(01)51022222233336(02)00643169001763(37)2"), "names two items"));
}

TEST_CASE("A best-before date is not taken for a use-by date") {
  const auto label = read("(01)51022222233336(15)280101");
  CHECK_FALSE(label.use_by);
  CHECK(label.elements[1] == Element{"15", "280101"});
}

TEST_CASE("Refusals say what was read and what was expected") {
  CHECK(refusal("(01)51022222233337(10)A") ==
        "(01) the item number is 51022222233337 with the check digit 7, but 6 was expected; scan "
        "or type it again.");
  CHECK(holds(refusal("(01)51022222233336(77)A"), "goes on with \"(77)A\""));
  CHECK(holds(refusal("015102222223333677A"), "goes on with \"77A\""));
  CHECK(holds(refusal("(01)51022222233336(10)AB(77)1"), "\"(77)1\""));
  CHECK(refusal("(01)51022222233336(17)261331") ==
        "(17) the use-by date is 261331, which is no day of the calendar; scan or type it again.");
  CHECK(holds(refusal("(01)5102222223333"), "13 characters and should have 14"));
  CHECK(holds(refusal("0151022222233336172612"), "4 characters and should have 6"));
  CHECK(holds(refusal("(10)"), "is empty"));
  CHECK(holds(refusal("(01)51022222233336(10)A(10)B"), "stands on the label twice"));
  CHECK(holds(refusal("0151022222233336"
                      "10ABCDEFGHIJKLMNOPQRSTU"),
              "set the scanner to send FNC1 as GS"));
  CHECK(holds(refusal("(01)51022222233336(10)A\xC3\xA9"), "holds the character number 195"));
  CHECK(holds(refusal("(01)51022222233336(10)A B"), "holds the character number 32"));
  CHECK(holds(refusal("]d1010643169001763"), "not a GS1 barcode"));
  CHECK_FALSE(refusal("").empty());
  CHECK_FALSE(refusal("(").empty());
  CHECK_FALSE(refusal("hello").empty());
}

TEST_CASE("A date that a lost separator has put into the lot is pointed out") {
  const auto lost = read(
      "0151022222233336"
      "10AB12317281231");
  CHECK(lost.lot == "AB12317281231");
  CHECK(holds(lost.doubt, "a separator got lost"));
  CHECK(holds(read("0151022222233336"
                   "10AB1231728123121S9")
                  .doubt,
              "a separator got lost"));
  CHECK(read("(01)51022222233336(10)AB12317281231").doubt.empty());
  CHECK(read("0151022222233336"
             "1728123110AB12317281231")
            .doubt.empty());
  CHECK(read("0151022222233336"
             "10AB1231726")
            .doubt.empty());
}

TEST_CASE("Two barcodes of one package are read as one label") {
  const std::array<std::string, 2> scans{
      "]C1"
      "0151022222233336",
      "]C1"
      "1715070710A213B1"};
  const auto label = read_label(scans, today);
  REQUIRE(label);
  CHECK(label->gtin == "51022222233336");
  CHECK(label->lot == "A213B1");
  CHECK_FALSE(read("(10)A213B1").names_item());
  const std::array<std::string, 2> others{"(01)51022222233336", "(01)00643169001763"};
  CHECK(holds(read_label(others, today).error().sentence, "contradict each other"));
}

TEST_CASE("Identifiers have the lengths of the standard's list") {
  // GS1 Barcode Syntax Dictionary: format, and whether a separator must follow.
  struct Row {
    const char* code;
    std::size_t least;
    std::size_t most;
    bool predefined;
  };
  for (const auto& row : {Row{"01", 14, 14, true}, {"02", 14, 14, true},    {"10", 1, 20, false},
                          {"11", 6, 6, true},      {"12", 6, 6, true},      {"13", 6, 6, true},
                          {"15", 6, 6, true},      {"16", 6, 6, true},      {"17", 6, 6, true},
                          {"20", 2, 2, true},      {"21", 1, 20, false},    {"22", 1, 20, false},
                          {"30", 1, 8, false},     {"37", 1, 8, false},     {"240", 1, 30, false},
                          {"241", 1, 30, false},   {"250", 1, 30, false},   {"251", 1, 30, false},
                          {"253", 13, 30, false},  {"3100", 6, 6, true},    {"3205", 6, 6, true},
                          {"3695", 6, 6, true},    {"3922", 1, 15, false},  {"400", 1, 30, false},
                          {"410", 13, 13, true},   {"417", 13, 13, true},   {"421", 4, 12, false},
                          {"4308", 1, 30, false},  {"710", 1, 20, false},   {"8003", 14, 30, false},
                          {"8005", 6, 6, false},   {"8006", 18, 18, false}, {"8200", 1, 70, false},
                          {"99", 1, 90, false}}) {
    CAPTURE(row.code);
    const auto identifier = gs1_identifier_at(row.code);
    REQUIRE(identifier);
    CHECK(identifier->code == row.code);
    CHECK(identifier->least() == row.least);
    CHECK(identifier->most() == row.most);
    CHECK(identifier->predefined_length().has_value() == row.predefined);
  }
  for (const auto* code : {"05", "14", "18", "3106", "3170", "3380", "418", "1", "310", "9"}) {
    CAPTURE(code);
    CHECK_FALSE(gs1_identifier_at(code));
  }
}

}  // namespace gs1_label_test
