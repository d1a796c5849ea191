#include "exchange/x12/segments.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include <utf8.h>

#include "clinic/say.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";
constexpr std::string_view blanks = " \t\r\n";

/// ISA is "ISA", 16 elements of fixed widths and the terminator: 106 bytes (from memory, confirmed
/// by public samples).
constexpr std::size_t isa_size = 106;
constexpr std::size_t isa_elements = 16;

std::string_view without_start(std::string_view bytes) {
  if (bytes.starts_with(utf8_mark)) bytes.remove_prefix(utf8_mark.size());
  bytes.remove_prefix(std::min(bytes.find_first_not_of(blanks), bytes.size()));
  return bytes;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool separates(char c) {
  return !is_digit(c) && !is_letter(c) && c != ' ' && static_cast<unsigned char>(c) < 0x80U;
}

/// ISO 8859-1 as UTF-8.
std::string from_latin(std::string_view bytes) {
  std::string made;
  for (const char c : bytes) {
    const auto code = static_cast<unsigned char>(c);
    if (code < 0x80U) {
      made += c;
    } else {
      made += static_cast<char>(0xC0U | (code >> 6U));
      made += static_cast<char>(0x80U | (code & 0x3FU));
    }
  }
  return made;
}

/// nullopt when the text does not begin with a whole ISA segment.
std::optional<X12Delimiters> delimiters_of(std::string_view text) {
  if (!text.starts_with("ISA") || text.size() < 4) return std::nullopt;
  X12Delimiters found;
  found.element = text[3];
  std::size_t at = 3;
  for (std::size_t i = 1; i < isa_elements; ++i) {
    if (i == 11 && at + 1 < text.size()) found.repetition = text[at + 1];
    at = text.find(found.element, at + 1);
    if (at == std::string_view::npos) return std::nullopt;
  }
  if (at > 2 * isa_size || at + 2 >= text.size()) return std::nullopt;
  found.component = text[at + 1];
  found.segment = text[at + 2];
  // A line break as the terminator may be two characters; what follows a segment is skipped.
  const bool apart = found.element != found.component && found.element != found.segment &&
                     found.component != found.segment;
  if (!apart || !separates(found.element) || !separates(found.component) ||
      !separates(found.segment)) {
    return std::nullopt;
  }
  return found;
}

bool has_fixed_widths(std::string_view text) {
  return text.size() >= isa_size && text[isa_size - 3] == text[3] &&
         std::ranges::count(text.substr(0, isa_size), text[3]) == isa_elements;
}

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  while (true) {
    const auto cut = text.find(separator);
    parts.emplace_back(trimmed(text.substr(0, cut)));
    if (cut == std::string_view::npos) return parts;
    text.remove_prefix(cut + 1);
  }
}

/// A code, a date, a number: no word of a language, which has more letters in a row.
bool is_code(std::string_view element) {
  constexpr std::size_t most = 24;
  constexpr int most_letters = 3;
  int letters = 0;
  for (const char c : element) {
    letters = is_letter(c) || static_cast<unsigned char>(c) >= 0x80U ? letters + 1 : 0;
    if (letters > most_letters) return false;
  }
  return element.size() <= 2 || (element.size() <= most && std::ranges::any_of(element, is_digit));
}

}  // namespace

const std::string& X12Segment::at(std::size_t element) const {
  static const std::string nothing;
  return element < elements.size() ? elements[element] : nothing;
}

std::string X12Segment::part(std::size_t element, std::size_t which) const {
  const auto parts = split(at(element), component);
  return which >= 1 && which <= parts.size() ? parts[which - 1] : std::string{};
}

bool looks_like_x12(std::string_view bytes) {
  const auto text = without_start(bytes);
  return text.starts_with("ISA") && text.size() > 3 && separates(text[3]);
}

Expected<X12Segments> read_x12_segments(const std::string& name, std::string bytes) {
  X12Segments made;
  if (!utf8::is_valid(bytes.begin(), bytes.end())) {
    bytes = from_latin(bytes);
    made.notes.emplace_back(said("The file is not UTF-8 text and was read as ISO 8859-1."));
  }
  auto text = without_start(bytes);
  X12Delimiters delimiters;
  for (int number = 1; !text.empty(); ++number) {
    if (text.starts_with("ISA")) {
      const auto found = delimiters_of(text);
      if (!found && number == 1) break;
      if (found) {
        delimiters = *found;
        if (!has_fixed_widths(text)) {
          made.notes.push_back(
              say("Segment {}: the fields of ISA do not have their fixed widths.", number));
        }
      }
    }
    const auto end = text.find(delimiters.segment);
    auto& segment = made.segments.emplace_back();
    segment.number = number;
    segment.component = delimiters.component;
    segment.elements = split(text.substr(0, end), delimiters.element);
    text.remove_prefix(std::min(end, text.size() - 1) + 1);
    if (end == std::string_view::npos) {
      made.notes.push_back(
          say("Segment {}: the file ends without the sign that ends a segment; it may be "
              "cut off.",
              number));
      break;
    }
    text.remove_prefix(std::min(text.find_first_not_of(blanks), text.size()));
  }
  if (made.segments.empty()) {
    return refuse(
        say("{} does not begin with a whole ISA segment, so it is not an X12 file or is "
            "damaged; ask for it again.",
            name));
  }
  return made;
}

std::string shown_text(const X12Segment& segment) {
  static constexpr std::array<std::string_view, 21> without_persons{
      "AMT", "BPR", "CAS", "CLM", "CLP", "DTM", "DTP", "GE", "HL", "IEA", "LX",
      "PLB", "QTY", "SE",  "ST",  "SV1", "SVC", "TRN", "LQ", "GS", "TS3"};
  constexpr std::size_t longest_id = 3;
  if (segment.id().size() > longest_id ||
      !std::ranges::all_of(segment.id(), [](char c) { return is_digit(c) || is_letter(c); })) {
    return said("(no segment)");
  }
  std::string shown = segment.id();
  if (std::ranges::find(without_persons, segment.id()) == without_persons.end()) return shown;
  for (std::size_t i = 1; i < segment.elements.size() && is_code(segment.at(i)); ++i) {
    shown += '*';
    shown += segment.at(i);
  }
  return excerpt(shown);
}

}  // namespace sparewell::exchange
