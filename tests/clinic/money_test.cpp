#include "clinic/money.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

namespace money_test {

using namespace sparewell;

TEST_CASE("Amounts are kept in the smallest unit of their currency") {
  CHECK(parse_money("12.5", {"EUR"})->minor == 1250);
  CHECK(parse_money("12", {"EUR"})->minor == 1200);
  CHECK(parse_money("-0.07", {"EUR"})->minor == -7);
  CHECK(parse_money("1200", {"JPY"})->minor == 1200);
  CHECK(parse_money("1.234", {"KWD"})->minor == 1234);
  CHECK(parse_money("12,50", {"EUR"}, ',')->minor == 1250);
  CHECK(parse_money("12.5000", {"EUR"})->minor == 1250);
}

TEST_CASE("What is not a plain amount is refused, never guessed") {
  for (const char* text : {"", "-", ".", "1,200.00", "12.345", "abc", "1e3", "$5", "1 000",
                           "99999999999999999999"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_money(text, {"EUR"}));
  }
}

TEST_CASE("Amounts are written with the currency's decimals") {
  CHECK(plain_text(Money{1250, {"EUR"}}) == "12.50");
  CHECK(plain_text(Money{-7, {"EUR"}}) == "-0.07");
  CHECK(plain_text(Money{1200, {"JPY"}}) == "1200");
  CHECK(text(Money{1234, {"KWD"}}) == "1.234 KWD");
}

TEST_CASE("Amounts of two currencies cannot be added") {
  CHECK((Money{1, {"EUR"}} + Money{2, {"EUR"}}).minor == 3);
  CHECK_THROWS_AS((void)(Money{1, {"EUR"}} + Money{2, {"USD"}}), std::logic_error);
}

}  // namespace money_test
