// What holds for every barcode: written and read again it says the same, a wrong digit is seen, and
// no text brings the reader down.
#include <random>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "exchange/barcode/check_digit.hpp"
#include "exchange/barcode/gs1_identifiers.hpp"
#include "exchange/barcode/read_label.hpp"

namespace barcode_properties_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const Date today = make_date(2026, 11, 25);
constexpr std::string_view set82 =
    "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz!\"%&'()*+,-./:;<=>?_";

class Random {
 public:
  int below(int limit) { return static_cast<int>(random_() % static_cast<unsigned>(limit)); }
  std::string text(std::string_view characters, int least, int most) {
    std::string made;
    for (int left = least + below(most - least + 1); left > 0; --left) {
      made += characters[static_cast<std::size_t>(below(static_cast<int>(characters.size())))];
    }
    return made;
  }
  std::string gtin() {
    const auto digits = text("0123456789", 13, 13);
    return digits + gs1_check_digit(digits);
  }
  Date date() { return make_date(1978, 1, 1) + days{below(35000)}; }

 private:
  std::mt19937 random_{20261125};
};

std::string yymmdd(Date date) {
  const auto iso = iso_text(date);
  return iso.substr(2, 2) + iso.substr(5, 2) + iso.substr(8, 2);
}

/// The fields in any order; the order decides where separators are needed.
std::vector<Element> random_elements(Random& random, std::string_view lot_characters) {
  std::vector<Element> made{{"01", random.gtin()}};
  if (random.below(2) == 0) made.push_back({"10", random.text(lot_characters, 1, 20)});
  if (random.below(2) == 0) made.push_back({"11", yymmdd(random.date())});
  if (random.below(2) == 0) made.push_back({"17", yymmdd(random.date())});
  if (random.below(2) == 0) made.push_back({"21", random.text(lot_characters, 1, 20)});
  if (random.below(2) == 0) made.push_back({"30", random.text("123456789", 1, 8)});
  if (random.below(3) == 0) made.push_back({"240", random.text(lot_characters, 1, 30)});
  if (random.below(3) == 0) made.push_back({"3102", random.text("0123456789", 6, 6)});
  if (random.below(3) == 0) made.push_back({"8005", random.text("0123456789", 6, 6)});
  for (std::size_t i = made.size(); i > 1; --i) {
    std::swap(made[i - 1], made[static_cast<std::size_t>(random.below(static_cast<int>(i)))]);
  }
  return made;
}

/// As a scanner sends it; written from the standard's list of starts without a separator.
std::string scanned(const std::vector<Element>& elements) {
  std::string text;
  for (const auto& element : elements) {
    text += element.identifier + element.value;
    const bool predefined = element.identifier == "01" || element.identifier == "11" ||
                            element.identifier == "17" || element.identifier == "3102";
    if (!predefined && &element != &elements.back()) text += '\x1D';
  }
  return text;
}

std::string typed(const std::vector<Element>& elements) {
  std::string text;
  for (const auto& element : elements) {
    text += fmt::format("({}){}", element.identifier, element.value);
  }
  return text;
}

std::string value_of(const std::vector<Element>& elements, const std::string& identifier) {
  for (const auto& element : elements) {
    if (element.identifier == identifier) return element.value;
  }
  return {};
}

std::string yymmdd(const std::optional<Date>& date) {
  return date ? yymmdd(*date) : "";
}

void check_says(const Label& label, const std::vector<Element>& elements) {
  CHECK(label.elements == elements);
  CHECK(label.gtin == value_of(elements, "01"));
  CHECK(label.lot == value_of(elements, "10"));
  CHECK(label.serial == value_of(elements, "21"));
  CHECK(yymmdd(label.made_on) == value_of(elements, "11"));
  CHECK(yymmdd(label.use_by) == value_of(elements, "17"));
  CHECK((label.quantity ? std::to_string(*label.quantity) : "") == value_of(elements, "30"));
}

/// True for texts that end as a sentence does, on one line.
bool is_sentence(const std::string& text) {
  return text.size() > 10 && text.ends_with('.') && text.find('\n') == std::string::npos;
}

}  // namespace

TEST_CASE("Fields written as an element string are read back, in any order") {
  Random random;
  for (int i = 0; i < 3000; ++i) {
    const auto elements = random_elements(random, set82);
    const auto text = scanned(elements);
    CAPTURE(text);
    const auto label = read_label((i % 2 == 0 ? "]d2" : "") + text, today);
    REQUIRE(label);
    check_says(*label, elements);
  }
}

TEST_CASE("Fields written with parentheses are read back, in any order") {
  Random random;
  for (int i = 0; i < 3000; ++i) {
    // On paper parentheses inside a value cannot be told from those around an identifier.
    const auto elements = random_elements(random, "0123456789ABCXYZabz!\"%&'*+,-./:;<=>?_");
    const auto text = typed(elements);
    CAPTURE(text);
    const auto label = read_label(text, today);
    REQUIRE(label);
    check_says(*label, elements);
  }
}

TEST_CASE("HIBC fields are read back, in one symbol and in two") {
  Random random;
  constexpr std::string_view capitals = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
  for (int i = 0; i < 3000; ++i) {
    const auto maker =
        random.text("ABCDEFGHIJKLMNOPQRSTUVWXYZ", 1, 1) + random.text(capitals, 3, 3);
    const auto product = random.text(capitals, 1, 18);
    const auto lot = random.text(capitals, 1, 18);
    const auto serial = random.text(capitals, 1, 18);
    const auto use_by = random.date();
    const int quantity = random.below(100);
    const auto item = fmt::format("+{}{}{}", maker, product, random.below(10));
    const auto second = fmt::format("$$8{:02}3{}{}/S{}", quantity, yymmdd(use_by), lot, serial);
    const auto joined = fmt::format("{}/{}", item, second);
    const auto first_check = *hibc_check_character(item);
    const auto linked = fmt::format("+{}{}", second, first_check);
    const std::vector<std::string> one{joined + *hibc_check_character(joined)};
    const std::vector<std::string> two{item + first_check, linked + *hibc_check_character(linked)};
    for (const auto& scans : {one, two}) {
      CAPTURE(scans.front());
      const auto label = read_label(scans, today);
      REQUIRE(label);
      CHECK(label->maker == maker);
      CHECK(label->product == product);
      CHECK(label->lot == lot);
      CHECK(label->serial == serial);
      CHECK(label->use_by == use_by);
      CHECK(label->quantity == quantity);
    }
  }
}

TEST_CASE("Any single wrong digit of an item number is refused") {
  Random random;
  for (int i = 0; i < 300; ++i) {
    const auto gtin = random.gtin();
    for (std::size_t at = 0; at < gtin.size(); ++at) {
      for (char digit = '0'; digit <= '9'; ++digit) {
        auto wrong = gtin;
        wrong[at] = digit;
        CAPTURE(wrong);
        const bool is_right = wrong == gtin;
        CHECK(read_label(wrong, today).has_value() == is_right);
        CHECK(read_label(fmt::format("]C101{}10A", wrong), today).has_value() == is_right);
        CHECK(read_label(fmt::format("(01){}", wrong), today).has_value() == is_right);
      }
    }
  }
}

TEST_CASE("Any single wrong character of an HIBC symbol is refused") {
  const std::string text = "+A99912345/$$52001510X33";
  for (std::size_t at = 1; at < text.size(); ++at) {
    for (const char c : std::string_view{"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%"}) {
      auto wrong = text;
      wrong[at] = c;
      CAPTURE(wrong);
      CHECK(read_label(wrong, today).has_value() == (c == text[at]));
    }
  }
}

TEST_CASE("No text brings the reader down, and every refusal is a sentence") {
  Random random;
  std::string bytes;
  for (int c = 0; c < 256; ++c) bytes += static_cast<char>(c);
  const std::vector<std::string> seeds{
      "0151022222233336111412311715070710A213B1\x1D"
      "211234",
      "(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234",
      "+A99912345/$$90999910X3/$$+320011577DEFG45/16D20111212D", "+$$52001510X3GD",
      "6291041500213"};
  for (int i = 0; i < 60000; ++i) {
    std::string text;
    if (i % 3 == 0) {
      text = random.text(bytes, 0, 60);
    } else {
      text = seeds[static_cast<std::size_t>(random.below(static_cast<int>(seeds.size())))];
      for (int change = 1 + random.below(4); change > 0; --change) {
        const auto at = static_cast<std::size_t>(random.below(static_cast<int>(text.size()) + 1));
        if (random.below(3) == 0) text.erase(at, static_cast<std::size_t>(1 + random.below(6)));
        if (random.below(2) == 0) {
          text.insert(at, random.text(i % 2 == 0 ? bytes : "0123456789()+/$]\x1D", 1, 3));
        }
      }
      // A right check character lets changed HIBC text past the first gate.
      if (i % 2 == 0 && text.starts_with('+')) {
        if (const auto check = hibc_check_character(text)) text += *check;
      }
    }
    const auto label = read_label(text, today);
    if (!label) {
      CAPTURE(text);
      CHECK(is_sentence(label.error().sentence));
    }
  }
}

}  // namespace barcode_properties_test
