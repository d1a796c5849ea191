#include "exchange/sheet/sheet_cells.hpp"

#include <charconv>
#include <cmath>
#include <cstring>
#include <optional>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

constexpr int most_rows = 1'048'576;
constexpr std::size_t most_columns = 16'384;

/// The column of "BC17", counted from 0; nothing when that is no cell's name.
std::optional<std::size_t> column_of(std::string_view cell) {
  std::size_t column = 0;
  std::size_t letters = 0;
  for (const char c : cell) {
    const char upper = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    if (upper < 'A' || upper > 'Z') break;
    if (++letters > 3) return std::nullopt;
    column = column * 26 + static_cast<std::size_t>(upper - 'A') + 1;
  }
  if (letters == 0 || column > most_columns) return std::nullopt;
  return column - 1;
}

/// Day 1 is 1900-01-01; day 60 a 29 February 1900 that never was, so that days from 61 on count
/// from 1899-12-30. The time of the day is left out. Nothing outside 1900 to 2199.
std::optional<Date> day_of(double serial, bool from_1904) {
  if (!(serial >= 0 && serial < 200'000)) return std::nullopt;
  const int whole = static_cast<int>(std::floor(serial));
  const Date start = from_1904 ? make_date(1904, 1, 1)
                               : (whole < 60 ? make_date(1899, 12, 31) : make_date(1899, 12, 30));
  const Date day = start + days{whole};
  if (day < make_date(1900, 1, 1) || day > make_date(2199, 12, 31)) return std::nullopt;
  return day;
}

std::optional<double> number_of(const char* text) {
  double value = 0;
  const char* end = text + std::strlen(text);
  const auto [read, error] = std::from_chars(text, end, value);
  if (error != std::errc{} || read != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

class CellReader {
 public:
  CellReader(const WorkbookParts& parts, const std::string& name, const SheetLimits& limits)
      : parts_{parts}, name_{name}, limits_{limits} {}

  Expected<SheetTable> read(const pugi::xml_node& data) {
    SheetTable table;
    table.name = name_;
    int number = 0;
    for (const auto& row : data.children()) {
      if (local_name(row) != "row") continue;
      number = row.attribute("r").as_int(number + 1);
      const bool rising = table.rows.empty() || number > table.rows.back().number;
      if (number < 1 || number > most_rows || !rising) return damaged();
      SheetRow made;
      made.number = number;
      if (auto refusal = read_row(row, made)) return tl::unexpected(*refusal);
      if (!made.cells.empty()) table.rows.push_back(std::move(made));
    }
    return table;
  }

 private:
  tl::unexpected<Refusal> damaged() const {
    return refuse(say(
        "{} is damaged: a cell of the sheet cannot be read; open it in a spreadsheet program and "
        "save it anew.",
        name_));
  }

  std::optional<Refusal> read_row(const pugi::xml_node& row, SheetRow& into) {
    std::size_t next = 0;
    for (const auto& cell : row.children()) {
      if (local_name(cell) != "c") continue;
      const std::string_view place = cell.attribute("r").as_string();
      const auto column = place.empty() ? std::optional{next} : column_of(place);
      if (!column || *column >= most_columns || *column < next) return damaged().value();
      next = *column + 1;
      SheetCell made;
      if (auto refusal = read_cell(cell, made, *column, into.number)) return refusal;
      if (made.blank()) continue;
      // Cells in between count, since room is made for them.
      counted_ += *column + 1 - into.cells.size();
      if (counted_ > limits_.cells) {
        return Refusal{say("{} has more than {} cells; it was not read.", name_, limits_.cells)};
      }
      into.cells.resize(*column + 1);
      into.cells.back() = std::move(made);
    }
    return std::nullopt;
  }

  std::optional<Refusal> read_cell(const pugi::xml_node& cell, SheetCell& into, std::size_t column,
                                   int row) const {
    const auto value = child_of(cell, "v");
    const std::string_view type = cell.attribute("t").as_string("n");
    if (type == "inlineStr") {
      set_text(into, string_of(child_of(cell, "is")));
      return std::nullopt;
    }
    if (!value) {
      if (!child_of(cell, "f")) return std::nullopt;
      return Refusal{
          say("{} has a formula in {}{} whose value was never worked out; open it in a spreadsheet "
              "program, save it, and try again.",
              name_, column_letters(column), row)};
    }
    const char* text = value.text().get();
    if (type == "s") return shared(text, into);
    if (type == "str") {
      set_text(into, text);
    } else if (type == "e") {
      into = {SheetCell::Kind::error, text, 0, {}};
    } else if (type == "b") {
      set_text(into, std::strcmp(text, "0") == 0 ? "no" : "yes");
    } else if (type == "d") {
      iso_date(text, into);
    } else if (*text != '\0') {
      return number(text, cell, into);
    }
    return std::nullopt;
  }

  std::optional<Refusal> shared(const char* text, SheetCell& into) const {
    const auto at = number_of(text);
    if (!at || *at < 0 || *at >= static_cast<double>(parts_.texts.size()) ||
        std::floor(*at) != *at) {
      return damaged().value();
    }
    set_text(into, parts_.texts[static_cast<std::size_t>(*at)]);
    return std::nullopt;
  }

  std::optional<Refusal> number(const char* text, const pugi::xml_node& cell,
                                SheetCell& into) const {
    const auto value = number_of(text);
    if (!value) return damaged().value();
    const auto style = static_cast<std::size_t>(cell.attribute("s").as_uint());
    const bool is_date = style < parts_.date_styles.size() && parts_.date_styles[style];
    if (const auto day = is_date ? day_of(*value, parts_.from_1904) : std::nullopt) {
      into = {SheetCell::Kind::date, iso_text(*day), *value, *day};
    } else {
      into = {SheetCell::Kind::number, fmt::format("{}", *value), *value, {}};
    }
    return std::nullopt;
  }

  static void iso_date(std::string_view text, SheetCell& into) {
    if (const auto day = parse_iso_date(text.substr(0, 10))) {
      into = {SheetCell::Kind::date, iso_text(*day), 0, *day};
    } else {
      set_text(into, std::string{text});
    }
  }

  static void set_text(SheetCell& into, std::string text) {
    if (text.empty()) return;
    into.kind = SheetCell::Kind::text;
    into.text = std::move(text);
  }

  const WorkbookParts& parts_;
  const std::string& name_;
  const SheetLimits& limits_;
  std::size_t counted_ = 0;
};

}  // namespace

Expected<SheetTable> read_cells(const pugi::xml_document& sheet, const WorkbookParts& parts,
                                const std::string& name, const SheetLimits& limits) {
  return CellReader{parts, name, limits}.read(child_of(sheet.document_element(), "sheetData"));
}

}  // namespace sparewell::exchange
