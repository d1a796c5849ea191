#include <array>
#include <string>

#include <doctest/doctest.h>

#include "exchange/barcode/check_digit.hpp"
#include "exchange/barcode/read_label.hpp"

namespace hibc_label_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const Date today = make_date(2026, 11, 25);

std::string checked(const std::string& text) {
  return text + *hibc_check_character(text);
}

Label read(const std::string& scan) {
  const auto label = read_label(scan, today);
  CAPTURE(scan);
  REQUIRE_MESSAGE(label, (label ? "" : label.error().sentence));
  return *label;
}

std::string refusal(std::vector<std::string> scans) {
  const auto label = read_label(scans, today);
  return label ? "" : label.error().sentence;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("The standard's example of an item is read") {
  // ANSI/HIBC 2.6-2016, figure 1.
  const auto label = read("+A123BJC5D6E71G");
  CHECK(label.maker == "A123");
  CHECK(label.product == "BJC5D6E7");
  CHECK(label.package_level == 1);
  CHECK(label.gtin.empty());
  CHECK(label.names_item());
  CHECK(read("*+A123BJC5D6E71G*\r\n") == label);
  CHECK(read("]A0+A123BJC5D6E71G") == label);
  CHECK(read("]C0+a123bjc5d6e71g") == label);
  CHECK(read("+H2160408351").product == "04083");  // seen in public test data
}

TEST_CASE("Item and lot in one symbol are read") {
  // Strings seen in public test data; their meaning likewise, for the day 015 of 2020.
  const auto label = read("+A99912345/$$52001510X33");
  CHECK(label.maker == "A999");
  CHECK(label.product == "1234");
  CHECK(label.package_level == 5);
  CHECK(label.use_by == make_date(2020, 1, 15));
  CHECK(label.lot == "10X3");
  const auto more = read("+A99912345/$$52001510X3/16D20111212/S77DEFG457");
  CHECK(more.made_on == make_date(2011, 12, 12));
  CHECK(more.serial == "77DEFG45");
  CHECK(more.lot == "10X3");
  const auto counted = read("+A99912345/$$90999910X3/$$+320011577DEFG45/16D20111212D");
  CHECK(counted.quantity == 9999);
  CHECK(counted.lot == "10X3");
  CHECK(counted.serial == "77DEFG45");
  CHECK(counted.use_by == make_date(2020, 1, 15));
  CHECK(counted.made_on == make_date(2011, 12, 12));
  const auto supplements = read("+A99912349/$10X3/16D20111231/14D20200131/Q500Z");
  CHECK(supplements.lot == "10X3");
  CHECK(supplements.made_on == make_date(2011, 12, 31));
  CHECK(supplements.use_by == make_date(2020, 1, 31));
  CHECK(supplements.quantity == 500);
}

TEST_CASE("The widely copied example is read with its true check character only") {
  const std::string text =
      "+H123PARTNO1234567890120/$$420020216LOT123456789012345/SXYZ456789012345678/16D20130202";
  const auto label = read(text + "H");
  CHECK(label.maker == "H123");
  CHECK(label.product == "PARTNO123456789012");
  CHECK(label.use_by == make_date(2020, 2, 2));
  CHECK(label.lot == "LOT123456789012345");
  CHECK(label.serial == "XYZ456789012345678");
  CHECK(label.made_on == make_date(2013, 2, 2));
  CHECK(holds(refusal({text + "C"}), "has the check character 'C', but 'H' was expected"));
}

TEST_CASE("A second symbol must belong to the first") {
  // ANSI/HIBC 2.6-2016, figures 5 and 6; the check character D computed.
  const auto second = read("+$$52001510X3GD");
  CHECK_FALSE(second.names_item());
  CHECK(second.lot == "10X3");
  const std::vector<std::string> scans{"+A123BJC5D6E71G", "+$$52001510X3GD"};
  const auto both = read_label(scans, today);
  REQUIRE(both);
  CHECK(both->product == "BJC5D6E7");
  CHECK(both->lot == "10X3");
  CHECK(both->use_by == make_date(2020, 1, 15));
  CHECK(*read_label(std::vector<std::string>{scans[1], scans[0]}, today) == *both);
  CHECK(holds(refusal({"+H2160408351", "+$$52001510X3GD"}),
              "its link character is 'G', but the first barcode's check character is '1'"));
  CHECK(holds(refusal({"+A123BJC5D6E71G", "(10)A"}), "one is HIBC"));
}

TEST_CASE("Every form of date, and a quantity before it") {
  // Forms $$2, $$6, $$8 and MMYY are from memory; $, $$3, $$4, $$5, $$7, $$9 and $$+3 were seen in
  // public test data.
  struct Row {
    const char* text;
    std::optional<Date> use_by;
    const char* lot;
    std::optional<int> quantity;
  };
  const Date day = make_date(2028, 9, 28);
  for (const auto& row :
       {Row{"$LT34A", std::nullopt, "LT34A", std::nullopt},
        Row{"$$7LT34A", std::nullopt, "LT34A", std::nullopt},
        Row{"$$0928LT34A", make_date(2028, 9, 30), "LT34A", std::nullopt},
        Row{"$$2092828LT34A", day, "LT34A", std::nullopt},
        Row{"$$3280928LT34A", day, "LT34A", std::nullopt},
        Row{"$$428092822LT34A", day, "LT34A", std::nullopt},
        Row{"$$528272LT34A", day, "LT34A", std::nullopt},
        Row{"$$62827222LT34A", day, "LT34A", std::nullopt}, Row{"28272LT34A", day, "LT34A", {}},
        Row{"$$8243280928LT34A", day, "LT34A", 24},
        Row{"$$8240928", make_date(2028, 9, 30), "", 24},
        Row{"$$9001007LT34A", std::nullopt, "LT34A", 100}, Row{"$$824", std::nullopt, "", 24}}) {
    CAPTURE(row.text);
    const auto label = read(checked(std::string{"+A99912345/"} + row.text));
    CHECK(label.use_by == row.use_by);
    CHECK(label.lot == row.lot);
    CHECK(label.quantity == row.quantity);
    const auto alone = read(checked(std::string{"+"} + row.text + "L"));
    CHECK(alone.lot == row.lot);
    CHECK(alone.use_by == row.use_by);
  }
  CHECK(read(checked("+A99912345/$+0001")).serial == "0001");
  CHECK(read("+$$7LT34AAV").lot == "LT34A");  // seen in public test data
  CHECK(read("+1234567890").lot == "678");    // likewise: day 345 of 2012, link 9
  CHECK(read("+1234567890").use_by == make_date(2012, 12, 10));
}

TEST_CASE("A blank and a slash as check character are read, the blank also as printed") {
  // ANSI/HIBC prints a blank as '_'; the check characters of these two are computed.
  CHECK(read("+A99941/").product == "4");
  const auto text = checked("+A99921");
  REQUIRE(text.back() == ' ');
  CHECK(read(text).product == "2");
  CHECK(read("+A99921_") == read(text));
}

TEST_CASE("Parts that cannot be read are refused, and contradictions too") {
  for (const auto* part :
       {"$$2139928A", "$$328093", "$$8X4A", "$", "$$", "14D20201301", "", "-5", "Q", "28999A"}) {
    CAPTURE(part);
    CHECK_FALSE(refusal({checked(std::string{"+A99912345/"} + part)}).empty());
  }
  CHECK(holds(refusal({checked("+A99912345/$A/$B")}), "contradicts what stands before it"));
  CHECK(holds(refusal({checked("+A9X")}), "is not a maker"));
  CHECK(holds(refusal({checked("+A999123X")}), "is not a maker"));
  CHECK_FALSE(refusal({"+"}).empty());
  CHECK_FALSE(refusal({"+A"}).empty());
}

}  // namespace hibc_label_test
