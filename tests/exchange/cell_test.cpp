#include "exchange/cell.hpp"

#include <doctest/doctest.h>

namespace cell_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const FolderFormat point;
const FolderFormat comma{.separator = ';', .decimal_sign = ',', .dates = {}};
const Currency euro{"EUR"};

Cell cell(std::string_view text, const FolderFormat& format = point) {
  return {text, format, euro};
}

double number(std::string_view text, const FolderFormat& format = point) {
  double value = -999;
  return read_number(cell(text, format), value).empty() ? value : -999;
}

std::string whole_reason(std::string_view text) {
  int value = 0;
  return read_whole(cell(text), value);
}

}  // namespace

TEST_CASE("Decimals follow the declared sign") {
  CHECK(number("1.5") == 1.5);
  CHECK(number("1,5", comma) == 1.5);
  CHECK(number(".5") == 0.5);
  CHECK(number("+2") == 2);
  double value = 0;
  CHECK(read_number(cell("1,5"), value) ==
        "'1,5' has ',' where the decimal sign is '.'; correct it, or declare the decimal sign ',' "
        "for the folder");
  CHECK(read_number(cell("1.5", comma), value) ==
        "'1.5' has '.' where the decimal sign is ','; correct it, or declare the decimal sign '.' "
        "for the folder");
}

TEST_CASE("What is no plain number is refused") {
  for (const auto* text : {"x", "1e3", "1 000", "1.2.3", ".", "-", "50%", "inf", "nan", "0x10"}) {
    CAPTURE(text);
    CHECK(number(text) == -999);
  }
}

TEST_CASE("A whole number may be written with zero decimals") {
  int value = 0;
  CHECK(read_whole(cell("12.0"), value).empty());
  CHECK(value == 12);
  CHECK(read_whole(cell("12,0", comma), value).empty());
  CHECK(whole_reason("1.5") == "'1.5' is not a whole number; correct it");
  CHECK(whole_reason("99999999999") == "'99999999999' is too large; correct it");
  CHECK(whole_reason("ten") ==
        "'ten' is not a whole number; write digits only, with '.' before any decimals");
}

TEST_CASE("Ranges include their ends") {
  const auto hours = number_between(0, 24, "hours a day, 0 to 24");
  double value = 0;
  CHECK(hours(cell("0"), value).empty());
  CHECK(hours(cell("24"), value).empty());
  CHECK(hours(cell("24.1"), value) ==
        "'24.1' is outside what is possible (hours a day, 0 to 24); correct it");
  CHECK_FALSE(hours(cell("-0.1"), value).empty());
}

TEST_CASE("Yes and no are understood as people and spreadsheets write them") {
  bool value = false;
  for (const auto* text : {"yes", "TRUE", "Y", "1"}) {
    CHECK(read_yes_no(cell(text), value).empty());
    CHECK(value);
  }
  for (const auto* text : {"no", "False", "n", "0"}) {
    CHECK(read_yes_no(cell(text), value).empty());
    CHECK_FALSE(value);
  }
  CHECK(read_yes_no(cell("maybe"), value) == "'maybe' is neither yes nor no; write yes or no");
}

TEST_CASE("Dates follow the declared pattern and no other") {
  const FolderFormat german{
      .separator = ';', .decimal_sign = ',', .dates = *DatePattern::from_text("DD.MM.YYYY")};
  Date date;
  CHECK(read_date(cell("05.01.2026", german), date).empty());
  CHECK(date == make_date(2026, 1, 5));
  CHECK(
      read_date(cell("05.01.2026"), date) ==
      "'05.01.2026' is not a date from 1900 to 2199 written YYYY-MM-DD; correct it, or declare how "
      "the folder writes dates");
  CHECK_FALSE(read_date(cell("2026-02-30"), date).empty());
  CHECK_FALSE(read_date(cell("1899-12-31"), date).empty());
  CHECK_FALSE(read_date(cell("2200-01-01"), date).empty());
}

TEST_CASE("Amounts are read in the row's currency") {
  Money money;
  CHECK(read_money(cell("12.50"), money).empty());
  CHECK(money == Money{1250, euro});
  CHECK(read_money(cell("12,5", comma), money).empty());
  CHECK(money == Money{1250, euro});
  CHECK(read_money(cell("-1"), money) == "'-1' is below zero; write an amount of 0 or more");
  CHECK(read_money(cell("1.005"), money).find("more decimals") != std::string::npos);
  CHECK(read_money(cell("12,50"), money).find("decimal sign is '.'") != std::string::npos);
  CHECK(read_signed_money(cell("-1"), money).empty());
}

TEST_CASE("Words outside the list are refused with the list") {
  Side side = Side::left;
  CHECK(read_word(cell("both"), side) ==
        "'both' is not one of the allowed words; use one of: left, right");
}

TEST_CASE("Price breaks must rise") {
  std::vector<PriceBreak> breaks;
  CHECK(read_price_breaks(cell("10:4.50; 50:4"), breaks).empty());
  CHECK(breaks == std::vector<PriceBreak>{{10, {450, euro}}, {50, {400, euro}}});
  CHECK(read_price_breaks(cell("10:4,50;50:4", comma), breaks).empty());
  CHECK(read_price_breaks(cell("50:4;10:4.5"), breaks).find("rising") != std::string::npos);
  CHECK(read_price_breaks(cell("10"), breaks).find("quantity:cost") != std::string::npos);
  CHECK(read_price_breaks(cell("0:4"), breaks).find("below 1 piece") != std::string::npos);
  CHECK_FALSE(read_price_breaks(cell("x:4"), breaks).empty());
  CHECK_FALSE(read_price_breaks(cell("10:x"), breaks).empty());
}

TEST_CASE("Lists leave out empty parts") {
  std::vector<std::string> list;
  CHECK(read_list(cell("a; b ;;c"), list).empty());
  CHECK(list == std::vector<std::string>{"a", "b", "c"});
}

TEST_CASE("A line break in a person's name counts as one space") {
  std::string words;
  CHECK(read_words(cell("Aldo \r\n  Maria"), words).empty());
  CHECK(words == "Aldo Maria");
  CHECK(read_words(cell("Aldo\tMaria Quill"), words).empty());
  CHECK(words == "Aldo Maria Quill");
}

TEST_CASE("Names hold no line breaks and no control characters, and are not endless") {
  std::string text;
  CHECK(read_name(cell("a\nb"), text) == "'a b' holds a line break or a tab; remove it");
  CHECK(read_text(cell("a\nb"), text).empty());
  CHECK(read_text(cell("a\x1F"
                       "b"),
                  text) == "holds a control character; remove it");
  CHECK(read_text(cell(std::string(1001, 'x')), text).find("longer than 1000") !=
        std::string::npos);
}

TEST_CASE("Currencies and order days are checked") {
  Currency currency;
  CHECK(read_currency(cell("eur"), currency).empty());
  CHECK(currency == euro);
  CHECK_FALSE(read_currency(cell("Euro"), currency).empty());
  OrderDays order_days;
  CHECK(read_order_days(cell("Mon;Thu"), order_days).empty());
  CHECK(order_days.weekdays == 0b0001001);
  CHECK_FALSE(read_order_days(cell("Someday"), order_days).empty());
}

TEST_CASE("A doubtful trade item number is recognised") {
  // 4006381333931 and 96385074: EAN-13 and EAN-8 examples of textbooks, from memory; both check
  // digits were recomputed by hand.
  CHECK(gtin_doubt("4006381333931").empty());
  CHECK(gtin_doubt("96385074").empty());
  CHECK(gtin_doubt("4006381333932").find("check digit") != std::string::npos);
  CHECK(gtin_doubt("4.01E+12").find("not all digits") != std::string::npos);
  CHECK(gtin_doubt("12345").find("leading zeros") != std::string::npos);
}

TEST_CASE("Excerpts end between characters") {
  CHECK(excerpt("short") == "short");
  const auto cut = excerpt(std::string(39, 'x') + "\xC3\xA9\xC3\xA9");
  CHECK(cut == std::string(39, 'x') + "...");
}

}  // namespace cell_test
