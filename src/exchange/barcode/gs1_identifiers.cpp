#include "exchange/barcode/gs1_identifiers.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/barcode/check_digit.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

struct Range {
  std::string_view first;
  std::string_view last;
  std::string_view format;
  std::string_view title;
};

/// Lengths and sets of characters from the GS1 Barcode Syntax Dictionary, the standard's own list.
/// "N14c" is 14 digits, the last of which is a check digit; "X..20" 1 to 20 characters; what may be
/// left out stands in brackets.
constexpr auto ranges = std::to_array<Range>({
    {"00", "00", "N18c", to_say("the shipping container's number")},
    {"01", "01", "N14c", to_say("the item number")},
    {"02", "02", "N14c", to_say("the item number of the content")},
    {"10", "10", "X..20", to_say("the lot")},
    {"11", "11", "N6", to_say("the date of manufacture")},
    {"12", "12", "N6", to_say("the due date")},
    {"13", "13", "N6", to_say("the packing date")},
    {"15", "15", "N6", to_say("the best-before date")},
    {"16", "16", "N6", to_say("the sell-by date")},
    {"17", "17", "N6", to_say("the use-by date")},
    {"20", "20", "N2", to_say("the variant")},
    {"21", "21", "X..20", to_say("the serial number")},
    {"22", "22", "X..20", to_say("the variant for consumers")},
    {"235", "235", "X..28", ""},
    {"240", "240", "X..30", to_say("the additional item number")},
    {"241", "241", "X..30", to_say("the customer's part number")},
    {"242", "242", "N..6", ""},
    {"243", "243", "X..20", ""},
    {"250", "250", "X..30", to_say("the second serial number")},
    {"251", "251", "X..30", to_say("the reference to the source")},
    {"253", "253", "N13c [X..17]", ""},
    {"254", "254", "X..20", ""},
    {"255", "255", "N13c [N..12]", ""},
    {"30", "30", "N..8", to_say("the count")},
    {"310", "316", "N6", to_say("a measure")},
    {"320", "329", "N6", to_say("a measure")},
    {"330", "337", "N6", to_say("a measure")},
    {"340", "349", "N6", to_say("a measure")},
    {"350", "357", "N6", to_say("a measure")},
    {"360", "369", "N6", to_say("a measure")},
    {"37", "37", "N..8", to_say("the count of pieces")},
    {"3900", "3909", "N..15", to_say("an amount")},
    {"3910", "3919", "N3 N..15", to_say("an amount")},
    {"3920", "3929", "N..15", to_say("a price")},
    {"3930", "3939", "N3 N..15", to_say("a price")},
    {"3940", "3943", "N4", ""},
    {"3950", "3955", "N6", to_say("a price")},
    {"400", "400", "X..30", to_say("the order number")},
    {"401", "401", "X..30", ""},
    {"402", "402", "N17c", to_say("the shipment's number")},
    {"403", "403", "X..30", ""},
    {"410", "417", "N13c", to_say("a location")},
    {"420", "420", "X..20", to_say("the postal code")},
    {"421", "421", "N3 X..9", to_say("the postal code")},
    {"422", "422", "N3", to_say("the country of origin")},
    {"423", "423", "N..15", ""},
    {"424", "424", "N3", ""},
    {"425", "425", "N..15", ""},
    {"426", "426", "N3", ""},
    {"427", "427", "X..3", ""},
    {"4300", "4301", "X..35", ""},
    {"4302", "4306", "X..70", ""},
    {"4307", "4307", "X2", ""},
    {"4308", "4308", "X..30", ""},
    {"4309", "4309", "N20", ""},
    {"4310", "4311", "X..35", ""},
    {"4312", "4316", "X..70", ""},
    {"4317", "4317", "X2", ""},
    {"4318", "4318", "X..20", ""},
    {"4319", "4319", "X..30", ""},
    {"4320", "4320", "X..35", ""},
    {"4321", "4323", "N1", ""},
    {"4324", "4325", "N10", ""},
    {"4326", "4326", "N6", ""},
    {"4330", "4333", "N6 [X1]", ""},
    {"7001", "7001", "N13", ""},
    {"7002", "7002", "X..30", ""},
    {"7003", "7003", "N10", to_say("the use-by date and time")},
    {"7004", "7004", "N..4", ""},
    {"7005", "7005", "X..12", ""},
    {"7006", "7006", "N6", ""},
    {"7007", "7007", "N6 [N6]", ""},
    {"7008", "7008", "X..3", ""},
    {"7009", "7009", "X..10", ""},
    {"7010", "7010", "X..2", ""},
    {"7011", "7011", "N6 [N4]", ""},
    {"7020", "7022", "X..20", ""},
    {"7023", "7023", "X..30", ""},
    {"7030", "7039", "N3 X..27", ""},
    {"7040", "7040", "N1 X3", ""},
    {"710", "715", "X..20", to_say("a national number")},
    {"7230", "7239", "X2 X..28", ""},
    {"7240", "7240", "X..20", ""},
    {"7241", "7241", "N2", ""},
    {"7242", "7242", "X..25", ""},
    {"8001", "8001", "N14", ""},
    {"8002", "8002", "X..20", ""},
    {"8003", "8003", "N14c [X..16]", ""},
    {"8004", "8004", "X..30", ""},
    {"8005", "8005", "N6", to_say("the price per unit")},
    {"8006", "8006", "N14c N4", to_say("the item number of a piece")},
    {"8007", "8007", "X..34", ""},
    {"8008", "8008", "N8 [N..4]", to_say("the date and time of manufacture")},
    {"8009", "8009", "X..50", ""},
    {"8010", "8010", "Y..30", ""},
    {"8011", "8011", "N..12", ""},
    {"8012", "8012", "X..20", to_say("the version")},
    {"8013", "8013", "X..25", to_say("the model number")},
    {"8017", "8018", "N18c", ""},
    {"8019", "8019", "N..10", ""},
    {"8020", "8020", "X..25", ""},
    {"8026", "8026", "N14c N4", ""},
    {"8030", "8030", "Z..90", ""},
    {"8110", "8110", "X..70", ""},
    {"8111", "8111", "N4", ""},
    {"8112", "8112", "X..70", ""},
    {"8200", "8200", "X..70", to_say("the page on the product")},
    {"90", "90", "X..30", to_say("the clinic's or maker's own text")},
    {"91", "99", "X..90", to_say("the clinic's or maker's own text")},
});

/// Measures carry in a fourth digit, 0 to 5, where their decimal point is.
bool is_measure(const Range& range) {
  return range.title == "a measure";
}

/// One part of a format.
struct Part {
  char set = 'X';
  std::size_t least = 1;
  std::size_t most = 1;
  bool has_check_digit = false;
};

Part read_part(std::string_view text) {
  Part part;
  const bool may_be_absent = text.front() == '[';
  if (may_be_absent) text = text.substr(1, text.size() - 2);
  part.has_check_digit = text.back() == 'c';
  if (part.has_check_digit) text.remove_suffix(1);
  part.set = text.front();
  text.remove_prefix(1);
  const bool variable = text.starts_with("..");
  if (variable) text.remove_prefix(2);
  part.most = 0;
  for (const char digit : text) {
    part.most = part.most * 10 + static_cast<std::size_t>(digit - '0');
  }
  part.least = may_be_absent ? 0 : variable ? 1 : part.most;
  return part;
}

std::vector<Part> parts_of(std::string_view format) {
  std::vector<Part> parts;
  while (!format.empty()) {
    const auto end = std::min(format.find(' '), format.size());
    parts.push_back(read_part(format.substr(0, end)));
    format.remove_prefix(std::min(end + 1, format.size()));
  }
  return parts;
}

bool is_letter_or_digit(char c) {
  return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

/// Character sets 82 (X), 39 (Y) and 64 (Z) of the standard, and digits (N).
bool in_set(char set, char c) {
  static constexpr std::string_view signs82 = "!\"%&'()*+,-./:;<=>?_";
  switch (set) {
    case 'N':
      return c >= '0' && c <= '9';
    case 'Y':
      return (is_letter_or_digit(c) && !(c >= 'a' && c <= 'z')) || c == '#' || c == '-' || c == '/';
    case 'Z':
      return is_letter_or_digit(c) || c == '-' || c == '_' || c == '=';
    default:
      return is_letter_or_digit(c) || signs82.find(c) != std::string_view::npos;
  }
}

std::string fault_of_part(const Part& part, std::string_view value) {
  for (const char c : value) {
    if (in_set(part.set, c)) continue;
    if (part.set == 'N') return say("is \"{}\" and should be digits", excerpt(value));
    return say("holds the character {}, which this kind of barcode cannot",
               c > ' ' && c < '\x7f' ? fmt::format("'{}'", c)
                                     : say("number {}", static_cast<std::uint8_t>(c)));
  }
  if (!part.has_check_digit || has_gs1_check_digit(value)) return {};
  return say("is {} with the check digit {}, but {} was expected", value, value.back(),
             gs1_check_digit(value.substr(0, value.size() - 1)));
}

}  // namespace

std::string Gs1Identifier::words() const {
  if (title.empty()) return fmt::format("({})", code);
  return fmt::format("({}) {}", code, said(std::string{title}.c_str()));
}

std::size_t Gs1Identifier::least() const {
  std::size_t sum = 0;
  for (const Part& part : parts_of(format)) sum += part.least;
  return sum;
}

std::size_t Gs1Identifier::most() const {
  std::size_t sum = 0;
  for (const Part& part : parts_of(format)) sum += part.most;
  return sum;
}

std::optional<std::size_t> Gs1Identifier::predefined_length() const {
  // Which first two digits these are never changes, so that old readers can skip new identifiers.
  static constexpr auto starts = std::to_array<std::string_view>(
      {"00", "01", "02", "03", "04", "11", "12", "13", "14", "15", "16",
       "17", "18", "19", "20", "31", "32", "33", "34", "35", "36", "41"});
  if (std::ranges::find(starts, code.substr(0, 2)) == starts.end()) return std::nullopt;
  return most();
}

std::string Gs1Identifier::fault(std::string_view value) const {
  if (value.empty()) return said("is empty");
  if (value.size() < least() || value.size() > most()) {
    if (least() == most()) {
      return say("is \"{}\" with {} characters and should have {}", excerpt(value), value.size(),
                 most());
    }
    return say("is \"{}\" with {} characters and should have {} to {}", excerpt(value),
               value.size(), least(), most());
  }
  for (const Part& part : parts_of(format)) {
    const auto own = value.substr(0, std::min(part.most, value.size()));
    if (auto fault = fault_of_part(part, own); !fault.empty()) return fault;
    value.remove_prefix(own.size());
  }
  return {};
}

std::optional<Gs1Identifier> gs1_identifier_at(std::string_view text) {
  for (const Range& range : ranges) {
    const auto length = range.first.size() + (is_measure(range) ? 1 : 0);
    const auto code = text.substr(0, length);
    if (code.size() < length || !all_digits(code)) continue;
    const auto stem = code.substr(0, range.first.size());
    if (stem < range.first || stem > range.last) continue;
    if (is_measure(range) && code.back() > '5') continue;
    return Gs1Identifier{code, range.format, range.title};
  }
  return std::nullopt;
}

}  // namespace sparewell::exchange
