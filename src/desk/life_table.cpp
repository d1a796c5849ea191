#include "desk/life_table.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <optional>
#include <set>

#include "clinic/say.hpp"
#include "exchange/csv_file.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

/// The cells of complete rows, before anything is made of them.
struct Cells {
  std::vector<std::string> columns;
  std::vector<std::vector<std::string>> rows;
  std::vector<int> lines;
  int left_out = 0;
};

constexpr std::array<exchange::ColumnSpec, 2> needed{{{"time", true}, {"event", true}}};

bool is_missing(const std::string& cell) {
  return cell.empty() || cell == "NA";
}

std::optional<double> number(const std::string& cell) {
  double value = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc{} || end != cell.data() + cell.size()) return std::nullopt;
  return value;
}

std::optional<bool> yes_or_no(const std::string& cell) {
  const std::string word = exchange::lower_case(cell);
  if (word == "1" || word == "yes" || word == "true") return true;
  if (word == "0" || word == "no" || word == "false") return false;
  return std::nullopt;
}

Expected<Cells> read_cells(const exchange::CsvFile& file) {
  Cells cells;
  cells.columns = file.header();
  std::string refusal;
  file.for_each_row([&](const exchange::CsvRow& row, double) {
    if (row.malformed || row.fields.size() != cells.columns.size()) {
      refusal = say("{}, line {}: the row does not have the header's {} cells; correct it.",
                    file.name(), row.line, cells.columns.size());
      return false;
    }
    if (std::ranges::any_of(row.fields, is_missing)) {
      ++cells.left_out;
    } else {
      cells.rows.emplace_back(row.fields.begin(), row.fields.end());
      cells.lines.push_back(row.line);
    }
    return true;
  });
  if (!refusal.empty()) return refuse(refusal);
  if (cells.rows.empty()) {
    return refuse(say("{} has no complete row; add rows with a time and an event.", file.name()));
  }
  return cells;
}

/// Appends a column of numbers, or of words as 0 and 1 each.
void add_covariate(const Cells& cells, std::size_t column, std::vector<std::string>& names,
                   std::vector<std::vector<double>>& values) {
  const auto numeric = [&](const auto& row) { return number(row[column]).has_value(); };
  if (std::ranges::all_of(cells.rows, numeric)) {
    names.push_back(cells.columns[column]);
    auto& made = values.emplace_back();
    for (const auto& row : cells.rows) made.push_back(*number(row[column]));
    return;
  }
  std::set<std::string> levels;
  for (const auto& row : cells.rows) levels.insert(row[column]);
  if (levels.size() > 1) levels.erase(levels.begin());  // the level that others are compared with
  for (const auto& level : levels) {
    names.push_back(cells.columns[column] + level);
    auto& made = values.emplace_back();
    for (const auto& row : cells.rows) made.push_back(row[column] == level ? 1.0 : 0.0);
  }
}

/// Fills times and events; returns the sentence that refuses the table, or "".
std::string read_lives(const std::string& name, const Cells& cells, std::size_t time_at,
                       std::size_t event_at, wear::LifeTable& table) {
  table.time.resize(static_cast<Eigen::Index>(cells.rows.size()));
  for (std::size_t i = 0; i < cells.rows.size(); ++i) {
    const auto time = number(cells.rows[i][time_at]);
    if (!time || !(*time > 0)) {
      return say("{}, line {}, time: '{}' is not a number above 0; correct it.", name,
                 cells.lines[i], exchange::excerpt(cells.rows[i][time_at]));
    }
    const auto event = yes_or_no(cells.rows[i][event_at]);
    if (!event) {
      return say(
          "{}, line {}, event: '{}' is not 1 (the life ended) or 0 (it was still going on); "
          "correct it.",
          name, cells.lines[i], exchange::excerpt(cells.rows[i][event_at]));
    }
    table.time[static_cast<Eigen::Index>(i)] = *time;
    table.event.push_back(*event);
  }
  return {};
}

/// Position of the column that names the groups; none when none is wanted.
Expected<std::optional<std::size_t>> group_column(const std::string& name, const Cells& cells,
                                                  const std::string& group) {
  if (group.empty()) return std::nullopt;
  if (group == "time" || group == "event") {
    return refuse(say("{}: column {} cannot name the groups; name another.", name, group));
  }
  const auto found = std::ranges::find(cells.columns, group);
  if (found != cells.columns.end()) {
    return static_cast<std::size_t>(found - cells.columns.begin());
  }
  return refuse(say("{} has no column {} to name the groups; name one of its columns.", name,
                    exchange::excerpt(group)));
}

/// Numbers the words of a column in the order in which they come.
std::vector<std::size_t> numbered(const Cells& cells, std::size_t column) {
  std::map<std::string, std::size_t> numbers;
  std::vector<std::size_t> group;
  for (const auto& row : cells.rows) {
    group.push_back(numbers.try_emplace(row[column], numbers.size()).first->second);
  }
  return group;
}

}  // namespace

Expected<LifeTableFile> read_life_table(const std::string& name, std::string bytes,
                                        const std::string& group) {
  const auto file = exchange::CsvFile::open(name, std::move(bytes), {}, needed);
  if (!file) return tl::unexpected(file.error());
  const auto cells = read_cells(*file);
  if (!cells) return tl::unexpected(cells.error());

  LifeTableFile made;
  made.left_out = cells->left_out;
  const auto time_at = static_cast<std::size_t>(file->positions()[0]);
  const auto event_at = static_cast<std::size_t>(file->positions()[1]);
  if (auto refusal = read_lives(name, *cells, time_at, event_at, made.table); !refusal.empty()) {
    return refuse(std::move(refusal));
  }
  const auto group_at = group_column(name, *cells, group);
  if (!group_at) return tl::unexpected(group_at.error());
  if (*group_at) made.table.group = numbered(*cells, **group_at);
  std::vector<std::vector<double>> values;
  for (std::size_t column = 0; column < cells->columns.size(); ++column) {
    if (column == time_at || column == event_at || column == *group_at) continue;
    add_covariate(*cells, column, made.table.covariate_names, values);
  }
  made.table.covariates.resize(made.table.time.size(), static_cast<Eigen::Index>(values.size()));
  for (std::size_t column = 0; column < values.size(); ++column) {
    made.table.covariates.col(static_cast<Eigen::Index>(column)) =
        Eigen::Map<const Eigen::VectorXd>(values[column].data(), made.table.time.size());
  }
  return made;
}

}  // namespace sparewell::desk
