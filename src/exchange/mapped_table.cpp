#include "exchange/mapped_table.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "clinic/say.hpp"
#include "clinic/words.hpp"
#include "exchange/csv_file.hpp"
#include "exchange/sheet/sheet_values.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

constexpr std::size_t looked_at = 40;

const TableField* field_named(std::string_view name, std::string_view target) {
  const auto& fields = table_fields(target);
  const auto found = std::ranges::find_if(
      fields, [&](const TableField& field) { return same_word(field.name, name); });
  return found == fields.end() ? nullptr : &*found;
}

/// The field that a heading is proposed for; nullptr when it is not known.
const TableField* field_of(std::string_view heading, std::string_view target) {
  std::string plain{heading};
  std::erase_if(plain, [](char c) { return c == '.' || c == '#' || c == ':'; });
  plain = trimmed(plain);
  if (const auto* own = field_named(plain, target)) return own;
  for (const auto& field : table_fields(target)) {
    for (const auto known : field.headings) {
      if (same_word(known, plain)) return &field;
    }
  }
  return nullptr;
}

std::pair<std::string_view, std::string_view> halves(std::string_view column) {
  const auto cut = std::min(column.find('='), column.size());
  return {trimmed(column.substr(0, cut)), trimmed(column.substr(std::min(cut + 1, column.size())))};
}

bool is_fixed(std::string_view heading) {
  return heading.size() >= 2 && heading.starts_with('"') && heading.ends_with('"');
}

std::string missing_fields(const std::vector<std::string>& columns, std::string_view target) {
  std::vector<std::string_view> missing;
  for (const auto& field : table_fields(target)) {
    if (field.required && std::ranges::none_of(columns, [&](const std::string& column) {
          return halves(column).first == field.name;
        })) {
      missing.push_back(field.name);
    }
  }
  if (missing.empty()) return {};
  return say("A mapping for {} needs a column for {}.", target,
             fmt::join(missing, said(" and for ")));
}

std::vector<std::string> headings_of(const SheetRow& row) {
  std::vector<std::string> headings;
  for (const auto& cell : row.cells) headings.emplace_back(sheet_text(cell));
  return headings;
}

bool holds_all(const std::vector<std::string>& headings, const std::vector<std::string>& columns) {
  return std::ranges::all_of(columns, [&](const std::string& column) {
    const auto heading = halves(column).second;
    return is_fixed(heading) || std::ranges::any_of(headings, [&](const std::string& there) {
             return same_word(there, heading);
           });
  });
}

}  // namespace

Expected<std::vector<std::string>> read_mapping_columns(std::string_view text,
                                                        std::string_view target) {
  std::vector<std::string> columns;
  std::set<std::string_view> named;
  while (!text.empty()) {
    const auto end = std::min(text.find(';'), text.size());
    const auto part = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (part.empty()) continue;
    const auto [name, heading] = halves(part);
    if (name.empty() || heading.empty()) {
      return refuse(
          say("'{}' is not FIELD=COLUMN, as in service_date=Date of service.", excerpt(part)));
    }
    const auto* field = field_named(name, target);
    if (field == nullptr) {
      std::vector<std::string_view> names;
      for (const auto& each : table_fields(target)) names.push_back(each.name);
      return refuse(say("There is no field '{}' for {}; the fields are {}.", excerpt(name), target,
                        fmt::join(names, ", ")));
    }
    if (!named.insert(field->name).second) {
      return refuse(say("The field {} is named twice; name it once.", field->name));
    }
    columns.push_back(fmt::format("{}={}", field->name, heading));
  }
  if (auto missing = missing_fields(columns, target); !missing.empty()) {
    return refuse(std::move(missing));
  }
  return columns;
}

std::string mapping_text(const ColumnMapping& mapping) {
  return fmt::format("{}", fmt::join(mapping.columns, ";"));
}

ColumnMapping propose_mapping(const SheetTable& table, std::string_view target) {
  ColumnMapping best;
  best.target = target;
  for (std::size_t i = 0; i < std::min(looked_at, table.rows.size()); ++i) {
    std::vector<std::string> columns;
    std::set<std::string_view> named;
    for (const auto& heading : headings_of(table.rows[i])) {
      const auto* field = field_of(heading, target);
      if (field == nullptr || heading.find_first_of(";=") != std::string::npos) continue;
      if (named.insert(field->name).second) {
        columns.push_back(fmt::format("{}={}", field->name, heading));
      }
    }
    if (columns.size() > best.columns.size()) best.columns = std::move(columns);
  }
  return best;
}

bool has_own_headings(const SheetTable& table, std::string_view target) {
  if (table.rows.empty()) return false;
  const auto headings = headings_of(table.rows.front());
  return std::ranges::all_of(table_fields(target), [&](const TableField& field) {
    return !field.required || std::ranges::any_of(headings, [&](const std::string& heading) {
      return same_word(heading, field.name);
    });
  });
}

Expected<MappedTable> MappedTable::open(const SheetTable& table, const ColumnMapping& mapping) {
  MappedTable made;
  made.format_.decimal_sign = mapping.decimal_sign == "," ? ',' : '.';
  if (!mapping.date_pattern.empty()) {
    const auto pattern = DatePattern::from_text(mapping.date_pattern);
    if (!pattern) return tl::unexpected(pattern.error());
    made.format_.dates = *pattern;
  }
  if (auto missing = missing_fields(mapping.columns, mapping.target); !missing.empty()) {
    return refuse(std::move(missing));
  }
  std::size_t at = 0;
  std::vector<std::string> headings;
  for (; at < std::min(looked_at, table.rows.size()); ++at) {
    headings = headings_of(table.rows[at]);
    if (holds_all(headings, mapping.columns)) break;
  }
  if (at == std::min(looked_at, table.rows.size())) {
    return refuse(
        say("{} has no row with all the headings of the mapping ({}); correct the mapping.",
            table.name, mapping_text(mapping)));
  }
  std::vector<bool> used(headings.size(), false);
  for (const auto& column : mapping.columns) {
    const auto [field, heading] = halves(column);
    if (is_fixed(heading)) {
      SheetCell cell;
      cell.kind = SheetCell::Kind::text;
      cell.text = heading.substr(1, heading.size() - 2);
      made.fixed_.emplace(field, std::move(cell));
      continue;
    }
    for (std::size_t i = 0; i < headings.size(); ++i) {
      if (!same_word(headings[i], heading)) continue;
      if (!made.columns_.emplace(field, i).second) {
        return refuse(
            say("{} has several columns '{}'; rename all but one.", table.name, excerpt(heading)));
      }
      used[i] = true;
    }
  }
  for (std::size_t i = 0; i < headings.size(); ++i) {
    if (same_word(headings[i], rejected_line_column)) made.rejected_line_ = i;
    if (!used[i] && !headings[i].empty()) made.ignored_.push_back(headings[i]);
  }
  for (std::size_t row = at + 1; row < table.rows.size(); ++row) {
    made.rows_.push_back(&table.rows[row]);
  }
  return made;
}

bool MappedTable::has(std::string_view field) const {
  return columns_.contains(field) || fixed_.contains(field);
}

int MappedTable::first_line(const SheetRow& row) const {
  int line = 0;
  if (!rejected_line_ || !read_sheet_whole(row.at(*rejected_line_), format_, line).empty() ||
      line < 1) {
    return row.number;
  }
  return line;
}

const SheetCell& MappedTable::cell(const SheetRow& row, std::string_view field) const {
  static const SheetCell nothing;
  if (const auto column = columns_.find(field); column != columns_.end()) {
    return row.at(column->second);
  }
  const auto fixed = fixed_.find(field);
  return fixed == fixed_.end() ? nothing : fixed->second;
}

}  // namespace sparewell::exchange
