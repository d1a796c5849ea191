#include "exchange/csv_file.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "clinic/words.hpp"
#include "exchange/csv_text.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

constexpr std::array<char, 3> separators{',', ';', '\t'};

bool is_separator(char c) {
  return std::ranges::find(separators, c) != separators.end();
}

bool is_rejects_column(std::string_view name) {
  static constexpr std::array<std::string_view, 5> known{
      rejected_line_column, rejected_column_column, rejected_reason_column, rejected_text_column,
      rejected_alike_column};
  return std::ranges::any_of(known, [&](std::string_view k) { return same_word(k, name); });
}

bool is_known(std::string_view name, std::span<const ColumnSpec> columns) {
  return std::ranges::any_of(columns,
                             [&](const ColumnSpec& spec) { return same_word(spec.name, name); });
}

std::vector<std::string> column_names(std::span<const std::string> fields) {
  std::vector<std::string> names;
  for (const auto& field : fields) names.emplace_back(trimmed(field));
  while (!names.empty() && names.back().empty()) names.pop_back();
  return names;
}

auto known_count(const std::vector<std::string>& names, std::span<const ColumnSpec> columns) {
  return std::ranges::count_if(names,
                               [&](const std::string& name) { return is_known(name, columns); });
}

/// The separator under which the header names more known columns than `now`, or '\0'.
char better_separator(std::string_view header, char now, std::span<const ColumnSpec> columns) {
  char best = '\0';
  std::ptrdiff_t most = 0;
  for (const char separator : separators) {
    std::ptrdiff_t known = 0;
    read_csv(header, separator, [&](const CsvRow& row) {
      known = known_count(column_names(row.fields), columns);
      return false;
    });
    if (separator == now) {
      if (known >= most) best = '\0';
      most = std::max(most, known);
    } else if (known > most) {
      most = known;
      best = separator;
    }
  }
  return best;
}

}  // namespace

std::string_view CsvFile::text() const {
  return std::string_view{bytes_}.substr(text_at_);
}

Expected<CsvFile> CsvFile::open(std::string name, std::string bytes, const FolderFormat& format,
                                std::span<const ColumnSpec> columns) {
  CsvFile file;
  file.name_ = std::move(name);
  file.bytes_ = std::move(bytes);
  file.separator_ = format.separator;
  const auto checked = check_csv_text(file.name_, file.bytes_);
  if (!checked) return tl::unexpected(checked.error());
  file.byte_order_mark_ = checked->byte_order_mark;
  file.text_at_ = file.bytes_.size() - checked->text.size();
  auto refusal = file.take_separator_line();
  if (refusal.empty()) refusal = file.read_structure();
  if (refusal.empty()) refusal = file.match_columns(columns);
  if (!refusal.empty()) return refuse(fmt::format("{} {}.", file.name_, refusal));
  return file;
}

std::string CsvFile::take_separator_line() {
  const auto rest = text();
  const auto line = rest.substr(0, rest.find_first_of("\r\n"));
  const bool quoted = line.starts_with('"') && line.ends_with('"') && line.size() > 2;
  const auto content = quoted ? line.substr(1, line.size() - 2) : line;
  if (!lower_case(content).starts_with("sep=")) return {};
  // Spreadsheets pad the line with separators.
  if (content.size() < 5 || !is_separator(content[4]) ||
      content.find_first_not_of(content[4], 5) != std::string_view::npos) {
    return said(
        "begins with a line 'sep=' that names no usable separator; write sep=, or sep=; there");
  }
  separator_ = content[4];
  separator_line_ = true;
  text_at_ += line.size();
  if (text().starts_with("\r\n")) {
    text_at_ += 2;
  } else if (!text().empty()) {
    text_at_ += 1;
  }
  return {};
}

std::string CsvFile::read_structure() {
  bool malformed_header = false;
  std::size_t last_count = 0;
  bool last_malformed = false;
  const auto end = read_csv(
      text(), separator_,
      [&](const CsvRow& row) {
        if (header_line_ == 0) {
          header_line_ = row.line;
          header_ = column_names(row.fields);
          header_text_ = row.text;
          malformed_header = row.malformed;
        }
        last_count = row.fields.size();
        last_malformed = row.malformed;
        return true;
      },
      first_line());
  if (end.open_quote_line > 0) {
    return say(
        "ends inside a quoted field that begins in line {}: it is cut off, or a "
        "quotation mark is missing; correct it or export the file again",
        end.open_quote_line);
  }
  if (header_line_ == 0) return said("is empty: it has no header row with the column names");
  if (malformed_header) {
    return say("has misplaced quotation marks in its header row (line {}); correct them",
               header_line_);
  }
  if (end.without_line_end && !last_malformed && end.last_line != header_line_ &&
      last_count < header_.size()) {
    return say(
        "is cut off: its last row (line {}) has {} of {} fields and no line end; "
        "export the file again",
        end.last_line, last_count, header_.size());
  }
  return {};
}

std::string CsvFile::missing_columns(std::span<const ColumnSpec> columns) const {
  std::string missing;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (!columns[i].required || positions_[i] >= 0) continue;
    if (!missing.empty()) missing += ", ";
    missing += columns[i].name;
  }
  return missing;
}

std::string CsvFile::match_columns(std::span<const ColumnSpec> columns) {
  const auto missing = [&] {
    positions_.clear();
    for (const auto& spec : columns) positions_.push_back(position_of(spec.name));
    return missing_columns(columns);
  }();
  if (!missing.empty()) {
    if (const char better = better_separator(header_text_, separator_, columns); better != '\0') {
      return say("looks separated by '{0}', not by {1}; declare it with --separator '{0}'",
                 better == '\t' ? std::string{"tab"} : std::string{better},
                 separator_name(separator_));
    }
    if (known_count(header_, columns) == 0) {
      return say(
          "has no header row: line {} names none of its columns, such as {}; put the "
          "column names into the first row",
          header_line_, columns.front().name);
    }
    return say("lacks the column {}; add it to the header row", missing);
  }
  for (std::size_t i = 0; i < header_.size(); ++i) {
    const auto& column = header_[i];
    const auto same = [&](const std::string& other) { return same_word(other, column); };
    if (column.empty()) {
      notes_.push_back(say("Column {} has no name and is ignored.", i + 1));
    } else if (std::any_of(header_.begin(), header_.begin() + static_cast<std::ptrdiff_t>(i),
                           same)) {
      return say("has the column {} twice; remove or rename one", excerpt(column));
    } else if (is_rejects_column(column)) {
      holds_rejects_ = true;
    } else if (!is_known(column, columns)) {
      notes_.push_back(say("The column '{}' is unknown and is ignored.", excerpt(column)));
    }
  }
  return {};
}

int CsvFile::position_of(std::string_view column) const {
  for (std::size_t i = 0; i < header_.size(); ++i) {
    if (same_word(header_[i], column)) return static_cast<int>(i);
  }
  return -1;
}

void CsvFile::for_each_row(const std::function<bool(const CsvRow&, double)>& take) const {
  const auto all = text();
  read_csv(
      all, separator_,
      [&](const CsvRow& row) {
        if (row.line == header_line_) return true;
        const auto at = static_cast<double>(row.text.data() - all.data());
        return take(row, at / static_cast<double>(all.size()));
      },
      first_line());
}

}  // namespace sparewell::exchange
