#include "exchange/barcode/read_label.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "clinic/say.hpp"
#include "exchange/barcode/check_digit.hpp"
#include "exchange/barcode/gs1_elements.hpp"
#include "exchange/barcode/gs1_label.hpp"
#include "exchange/barcode/hibc_label.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

/// What the scanner says about the kind of barcode (ISO/IEC 15424).
enum class Symbology {
  not_said,
  gs1,   ///< with FNC1 in first place: an element string
  plain  ///< any other: HIBC, or a bare item number
};

struct Scan {
  Symbology symbology = Symbology::not_said;
  std::string_view text;
};

/// All barcodes of one package, as far as they have been read.
struct Package {
  std::vector<Element> gs1;
  Separation separation = Separation::by_parentheses;
  std::optional<HibcSymbol> hibc_item;
  std::optional<HibcSymbol> hibc_second;
};

/// Without the line breaks and tabs that scanners add. A blank may be an HIBC check character.
std::string_view without_line_ends(std::string_view text) {
  const auto is_end = [](char c) { return c == '\r' || c == '\n' || c == '\t'; };
  while (!text.empty() && (is_end(text.front()) || text.front() == ' ')) text.remove_prefix(1);
  while (!text.empty() && is_end(text.back())) text.remove_suffix(1);
  return text;
}

Scan split_prefix(std::string_view text) {
  static constexpr auto gs1 = std::to_array<std::string_view>({"]C1", "]d2", "]Q3", "]e0"});
  text = without_line_ends(text);
  if (text.size() < 3 || text.front() != ']') return {Symbology::not_said, text};
  const bool is_gs1 = std::ranges::find(gs1, text.substr(0, 3)) != gs1.end();
  return {is_gs1 ? Symbology::gs1 : Symbology::plain, text.substr(3)};
}

bool may_be_gtin(std::string_view text) {
  static constexpr std::array<std::size_t, 4> lengths{8, 12, 13, 14};
  return all_digits(text) && std::ranges::find(lengths, text.size()) != lengths.end();
}

/// Adds the fields of one more barcode; the same field with another value is refused.
Expected<void> add_fields(std::vector<Element>& fields, std::vector<Element> more) {
  for (auto& element : more) {
    const auto earlier = std::ranges::find(fields, element.identifier, &Element::identifier);
    if (earlier == fields.end()) {
      fields.push_back(std::move(element));
    } else if (earlier->value != element.value) {
      return refuse(
          say("The barcodes contradict each other: ({}) is \"{}\" on one and \"{}\" on "
              "another; scan those of one package.",
              element.identifier, excerpt(earlier->value), excerpt(element.value)));
    }
  }
  return {};
}

Expected<void> take_gs1(Package& package, Expected<std::vector<Element>> elements) {
  if (!elements) return tl::unexpected(elements.error());
  return add_fields(package.gs1, std::move(*elements));
}

Expected<void> take_hibc(Package& package, std::string_view text, Date today) {
  // People type HIBC, which has capitals only, as they like; asterisks are Code 39's own frame.
  std::string capitals{text};
  std::ranges::transform(capitals, capitals.begin(), [](char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  });
  auto symbol = read_hibc(capitals, today);
  if (!symbol) return tl::unexpected(symbol.error());
  auto& place = symbol->label.names_item() ? package.hibc_item : package.hibc_second;
  if (place && place->label != symbol->label) {
    return refuse(
        say("Two HIBC barcodes of the same kind contradict each other; scan those of one "
            "package."));
  }
  place = std::move(*symbol);
  return {};
}

Expected<void> take(Package& package, std::string_view scan, Date today) {
  auto [symbology, text] = split_prefix(scan);
  if (text.size() > 2 && text.front() == '*' && text.back() == '*') {
    text = text.substr(1, text.size() - 2);
  }
  if (text.starts_with('+') && symbology != Symbology::gs1) return take_hibc(package, text, today);
  text = trimmed(text);
  if (text.empty()) return refuse(say("The barcode is empty; scan it again."));
  if (symbology != Symbology::gs1 && may_be_gtin(text)) {
    auto gtin = gtin_of_digits(text);
    if (!gtin) return tl::unexpected(gtin.error());
    return add_fields(package.gs1, {{"01", std::move(*gtin)}});
  }
  if (text.starts_with('(')) return take_gs1(package, gs1_elements_typed(text));
  if (symbology == Symbology::plain) {
    return refuse(
        say("\"{}\" is neither an item number nor an HIBC barcode, and the "
            "scanner says that it is not a GS1 barcode; enter the part by hand.",
            excerpt(text)));
  }
  package.separation = Separation::by_scanner;
  return take_gs1(package, gs1_elements_scanned(text));
}

Expected<Label> hibc_label_of(const Package& package) {
  if (!package.hibc_second) return package.hibc_item->label;
  if (!package.hibc_item) return package.hibc_second->label;
  return join_hibc(*package.hibc_item, *package.hibc_second);
}

}  // namespace

Expected<Label> read_label(std::span<const std::string> scans, Date today) {
  Package package;
  for (const std::string& scan : scans) {
    if (const auto done = take(package, scan, today); !done) return tl::unexpected(done.error());
  }
  const bool has_hibc = package.hibc_item || package.hibc_second;
  if (has_hibc && !package.gs1.empty()) {
    return refuse(say("One barcode is GS1 and one is HIBC; scan the barcodes of one kind."));
  }
  if (has_hibc) return hibc_label_of(package);
  return gs1_label(std::move(package.gs1), package.separation, today);
}

Expected<Label> read_label(std::string_view scan, Date today) {
  const std::array<std::string, 1> scans{std::string{scan}};
  return read_label(scans, today);
}

}  // namespace sparewell::exchange
