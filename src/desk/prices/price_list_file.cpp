#include "desk/prices/price_list_file.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/cell.hpp"
#include "exchange/sheet/sheet_values.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

using exchange::SheetCell;
using exchange::SheetRow;
using exchange::SheetTable;

/// Lower case, letters, digits, '+' and '&' only, one space between words.
std::string plain(std::string_view heading) {
  std::string made;
  for (const char c : exchange::lower_case(heading)) {
    const bool sign = static_cast<unsigned char>(c) < 0x80U && c != '+' && c != '&' &&
                      !(c >= 'a' && c <= 'z') && !(c >= '0' && c <= '9');
    if (c == '\'') continue;
    if (!sign) {
      made += c;
    } else if (!made.empty() && made.back() != ' ') {
      made += ' ';
    }
  }
  while (made.ends_with(' ')) made.pop_back();
  return made;
}

std::string_view field_named(std::string_view name) {
  if (same_word(name, "code")) return "item_code";
  if (same_word(name, "price")) return "unit_cost";
  for (const auto& field : price_fields()) {
    if (same_word(field.name, name)) return field.name;
  }
  return {};
}

bool is_heading_of(const PriceField& field, const std::string& heading) {
  return std::ranges::find(field.headings, std::string_view{heading}) != field.headings.end();
}

/// The field of a heading; "" when it is not known.
std::string_view field_of(const std::string& heading) {
  for (const auto& field : price_fields()) {
    if (is_heading_of(field, heading)) return field.name;
  }
  return {};
}

/// The currency at the end of "price eur", when what is before it names the price.
std::optional<Currency> currency_in(const std::string& heading) {
  const auto cut = heading.rfind(' ');
  if (cut == std::string::npos || field_of(heading.substr(0, cut)) != "unit_cost") {
    return std::nullopt;
  }
  return parse_currency(std::string_view{heading}.substr(cut + 1));
}

/// 10 in "price from 10", "from 10 pcs" or "10+".
std::optional<int> quantity_in(std::string_view heading) {
  for (const std::string_view start : {"unit price ", "price ", "cost "}) {
    if (heading.starts_with(start)) heading.remove_prefix(start.size());
  }
  const bool from = heading.starts_with("from ");
  if (from) heading.remove_prefix(5);
  int quantity = 0;
  const auto [end, error] =
      std::from_chars(heading.data(), heading.data() + heading.size(), quantity);
  if (error != std::errc{} || quantity < 2) return std::nullopt;
  const auto rest =
      exchange::trimmed({end, static_cast<std::size_t>(heading.data() + heading.size() - end)});
  if (from && (rest.empty() || rest == "pcs" || rest == "pieces")) return quantity;
  return !from && rest == "+" ? std::optional{quantity} : std::nullopt;
}

struct Headings {
  std::map<std::string_view, std::size_t> fields;  ///< field and column
  std::map<int, std::size_t> breaks;               ///< quantity and column
  std::optional<Currency> currency;
  std::vector<std::string> ignored;
  std::string twice;  ///< a field that two headings name

  [[nodiscard]] bool has(std::string_view field) const { return fields.contains(field); }
  [[nodiscard]] bool complete() const {
    return has("unit_cost") && (has("supplier_item") || has("item_code") || has("gtin"));
  }
};

Headings headings_of(const SheetRow& row, const std::map<std::string, std::string>& columns) {
  Headings found;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    if (row.cells[i].blank()) continue;
    const auto heading = plain(row.cells[i].text);
    std::string_view field;
    for (const auto& [name, wanted] : columns) {
      if (plain(wanted) == heading) field = field_named(name);
    }
    const bool by_hand = !field.empty();
    if (!by_hand) field = field_of(heading);
    if (const auto currency = field.empty() ? currency_in(heading) : std::nullopt) {
      field = "unit_cost";
      found.currency = currency;
    }
    // What a person has named goes before what is known.
    const bool named_otherwise = !by_hand && std::ranges::any_of(columns, [&](const auto& column) {
      return field_named(column.first) == field;
    });
    if (field.empty()) {
      if (const auto quantity = quantity_in(heading)) {
        found.breaks.emplace(*quantity, i);
        continue;
      }
    }
    if (field.empty() || named_otherwise) {
      found.ignored.push_back(row.cells[i].text);
    } else if (!found.fields.emplace(field, i).second) {
      found.twice = field;
    }
  }
  return found;
}

class PriceRows {
 public:
  PriceRows(const Headings& headings, const Currency& otherwise,
            const exchange::FolderFormat& format)
      : headings_{headings}, otherwise_{otherwise}, format_{format} {}

  void read(const SheetRow& row, PriceListFile& into) {
    const auto filled = std::ranges::count_if(
        row.cells, [](const SheetCell& found) { return !exchange::trimmed(found.text).empty(); });
    if (filled < 2) return;
    supply::PriceRow made;
    made.row = row.number;
    made.supplier_item = words(row, "supplier_item");
    made.item_code = words(row, "item_code");
    made.gtin = words(row, "gtin");
    made.description = words(row, "description");
    // A list that has one column of codes means its own.
    if (!headings_.has("supplier_item")) made.supplier_item = made.item_code;
    const bool nameless = made.supplier_item.empty() && made.item_code.empty() && made.gtin.empty();
    if (nameless && words(row, "unit_cost").empty()) return;
    if (nameless) {
      into.refused.push_back(
          {row.number, "", said("names no item; give a part number, code or GTIN")});
      return;
    }
    if (auto fault = read_figures(row, made)) {
      into.refused.push_back({row.number, fault->first, fault->second});
      into.unread.push_back(std::move(made));
      return;
    }
    into.rows.push_back(std::move(made));
  }

 private:
  using Fault = std::pair<std::string, exchange::Reason>;

  [[nodiscard]] const SheetCell& cell(const SheetRow& row, std::string_view field) const {
    static const SheetCell nothing;
    const auto at = headings_.fields.find(field);
    return at == headings_.fields.end() ? nothing : row.at(at->second);
  }
  [[nodiscard]] std::string words(const SheetRow& row, std::string_view field) const {
    const auto& found = cell(row, field);
    return found.kind == SheetCell::Kind::error ? std::string{}
                                                : std::string{exchange::trimmed(found.text)};
  }

  std::optional<Fault> read_figures(const SheetRow& row, supply::PriceRow& into) const {
    for (const auto* text : {&into.supplier_item, &into.item_code, &into.gtin, &into.description}) {
      std::string checked;
      if (auto reason = exchange::read_name({*text, format_, otherwise_}, checked);
          !reason.empty()) {
        return Fault{"", reason};
      }
    }
    Currency currency = headings_.currency.value_or(otherwise_);
    if (const auto text = words(row, "currency"); !text.empty()) {
      if (auto reason = exchange::read_currency({text, format_, currency}, currency);
          !reason.empty()) {
        return Fault{"currency", reason};
      }
    }
    if (auto reason = read_money(cell(row, "unit_cost"), currency, into.unit_cost);
        !reason.empty()) {
      return Fault{"unit_cost", reason};
    }
    for (const auto& [field, member, least] :
         {std::tuple{"pack_size", &supply::PriceRow::pack_size, 1},
          std::tuple{"min_order", &supply::PriceRow::min_order, 0},
          std::tuple{"lead_days", &supply::PriceRow::lead_days, 0}}) {
      if (auto reason = read_whole(cell(row, field), least, into.*member); !reason.empty()) {
        return Fault{field, reason};
      }
    }
    return read_breaks(row, currency, into);
  }

  exchange::Reason read_money(const SheetCell& found, const Currency& currency,
                              std::optional<Money>& into) const {
    if (exchange::trimmed(found.text).empty()) return {};
    Money money;
    auto reason = exchange::read_sheet_money(found, format_, currency, money);
    if (!reason.empty()) return reason;
    if (money.minor < 0) {
      return say("'{}' is no price; write an amount of 0 or more", exchange::trimmed(found.text));
    }
    into = money;
    return {};
  }

  exchange::Reason read_whole(const SheetCell& found, int least, std::optional<int>& into) const {
    constexpr int most = 100'000;
    const auto text = exchange::trimmed(found.text);
    if (text.empty()) return {};
    double value = found.number;
    if (found.kind == SheetCell::Kind::text) {
      if (auto reason = exchange::read_number({text, format_, otherwise_}, value);
          !reason.empty()) {
        return reason;
      }
    } else if (found.kind != SheetCell::Kind::number) {
      return say("'{}' is not a whole number; correct it", exchange::excerpt(text));
    }
    if (std::floor(value) != value || value < least || value > most) {
      return say("'{}' is not a whole number from {} to {}; correct it", exchange::excerpt(text),
                 least, most);
    }
    into = static_cast<int>(value);
    return {};
  }

  std::optional<Fault> read_breaks(const SheetRow& row, const Currency& currency,
                                   supply::PriceRow& into) const {
    if (headings_.has("price_breaks")) {
      std::vector<PriceBreak> breaks;
      const auto text = words(row, "price_breaks");
      auto reason = exchange::read_price_breaks({text, format_, currency}, breaks);
      if (!reason.empty()) return Fault{"price_breaks", reason};
      into.price_breaks = std::move(breaks);
    }
    if (headings_.breaks.empty()) return std::nullopt;
    std::vector<PriceBreak> breaks;
    for (const auto& [quantity, column] : headings_.breaks) {
      std::optional<Money> cost;
      auto reason = read_money(row.at(column), currency, cost);
      if (!reason.empty()) return Fault{say("price from {}", quantity), reason};
      if (cost) breaks.push_back({quantity, *cost});
    }
    into.price_breaks = std::move(breaks);
    return std::nullopt;
  }

  const Headings& headings_;
  const Currency& otherwise_;
  const exchange::FolderFormat& format_;
};

/// What is wrong with the headings that a person named; "" when nothing is.
std::string fault_of(const std::map<std::string, std::string>& columns) {
  for (const auto& [name, heading] : columns) {
    if (!field_named(name).empty()) continue;
    std::vector<std::string_view> names;
    for (const auto& field : price_fields()) names.push_back(field.name);
    return say("A price list has no field '{}'; the fields are {}.", name, fmt::join(names, ", "));
  }
  return {};
}

}  // namespace

const std::vector<PriceField>& price_fields() {
  static const std::vector<PriceField> fields{
      {"supplier_item", {"supplier item",    "suppliers item",
                         "supplier part no", "suppliers part no",
                         "part no",          "part number",
                         "article",          "article no",
                         "article number",   "order no",
                         "order number",     "ref",
                         "reference",        "sku",
                         "catalogue no",     "catalogue number",
                         "catalog number",   "item no",
                         "item number",      "product code"}},
      {"item_code", {"item code", "code", "our code", "your code", "customer item", "item"}},
      {"gtin", {"gtin", "gtin 13", "gtin 14", "ean", "ean code", "barcode", "upc"}},
      {"description", {"description", "name", "text", "product", "product name", "designation"}},
      {"unit_cost",
       {"unit cost", "unit price", "price", "net price", "price each", "price per piece",
        "price piece", "cost", "list price", "your price"}},
      {"currency", {"currency", "currency code"}},
      {"pack_size",
       {"pack size", "pack", "packaging", "pieces per pack", "pack quantity", "pack qty",
        "packaging unit"}},
      {"min_order",
       {"min order", "minimum order", "minimum order quantity", "moq", "min quantity", "min qty",
        "minimum quantity"}},
      {"lead_days",
       {"lead days", "lead time", "lead time days", "delivery days", "delivery time days"}},
      {"price_breaks", {"price breaks", "quantity prices", "scale prices"}}};
  return fields;
}

Expected<std::map<std::string, std::string>> read_headings(std::string_view text) {
  std::map<std::string, std::string> made;
  while (!text.empty()) {
    const auto end = std::min(text.find(';'), text.size());
    const auto part = exchange::trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (part.empty()) continue;
    const auto cut = std::min(part.find('='), part.size());
    const auto field = exchange::trimmed(part.substr(0, cut));
    const auto heading = exchange::trimmed(part.substr(std::min(cut + 1, part.size())));
    if (field.empty() || heading.empty()) {
      return refuse(say("'{}' is not FIELD=HEADING, as in unit_cost=Price.", part));
    }
    made[std::string{field}] = heading;
  }
  if (auto fault = fault_of(made); !fault.empty()) return refuse(std::move(fault));
  return made;
}

Expected<PriceListFile> read_price_list(const SheetTable& table, const Currency& otherwise,
                                        const std::map<std::string, std::string>& columns,
                                        const exchange::FolderFormat& format) {
  constexpr std::size_t looked_at = 40;
  if (auto fault = fault_of(columns); !fault.empty()) return refuse(std::move(fault));
  for (std::size_t i = 0; i < std::min(looked_at, table.rows.size()); ++i) {
    const auto headings = headings_of(table.rows[i], columns);
    if (!headings.complete()) continue;
    if (!headings.twice.empty()) {
      return refuse(say("{} has several columns for {}; say which one with --column {}=HEADING.",
                        table.name, headings.twice, headings.twice));
    }
    PriceListFile made;
    made.name = table.name;
    for (const auto& [field, column] : headings.fields) {
      made.used.emplace(field, table.rows[i].at(column).text);
    }
    made.ignored = headings.ignored;
    PriceRows reader{headings, otherwise, format};
    for (std::size_t row = i + 1; row < table.rows.size(); ++row) {
      reader.read(table.rows[row], made);
    }
    return made;
  }
  return refuse(say(
      "{} has no row of headings with a price and a part number, code or GTIN; name them, as in "
      "--column supplier_item=HEADING --column unit_cost=HEADING.",
      table.name));
}

}  // namespace sparewell::desk
