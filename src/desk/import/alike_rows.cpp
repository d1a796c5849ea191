#include "desk/import/alike_rows.hpp"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

namespace sparewell::desk {

AlikeRows::AlikeRows(const exchange::CsvFile& file, std::vector<std::string> key_columns)
    : file_{file}, names_{std::move(key_columns)}, wrong_columns_(names_.size(), false) {
  for (const auto& name : names_) positions_.push_back(file.position_of(name));
}

std::string AlikeRows::group_key(const exchange::CsvRow& row, std::size_t wrong) const {
  std::string key = names_[wrong];
  for (std::size_t i = 0; i < positions_.size(); ++i) {
    key += '\x1F';
    if (i != wrong) key += exchange::cell_at(row, positions_[i]);
  }
  return key;
}

void AlikeRows::want(const exchange::CsvRow& row, const std::string& wrong_column,
                     std::size_t reject) {
  const auto found = std::ranges::find(names_, wrong_column);
  if (found == names_.end()) return;
  const auto wrong = static_cast<std::size_t>(found - names_.begin());
  wrong_columns_[wrong] = true;
  auto& group = wanted_[group_key(row, wrong)];
  group.column = wrong_column;
  group.rejects.push_back(reject);
}

void AlikeRows::count(const exchange::CsvRow& row) {
  for (std::size_t i = 0; i < names_.size(); ++i) {
    if (!wrong_columns_[i]) continue;
    const auto group = wanted_.find(group_key(row, i));
    if (group == wanted_.end()) continue;
    ++group->second.counts[std::string{exchange::cell_at(row, positions_[i])}];
  }
}

void AlikeRows::fill(std::vector<exchange::Reject>& rejects) const {
  for (const auto& [key, group] : wanted_) {
    std::string lines;
    for (const auto& [text, number] : group.counts) {
      lines += fmt::format("{}{} {} = {}", lines.empty() ? "" : "\n", group.column, text, number);
    }
    for (const auto reject : group.rejects) rejects[reject].alike = lines;
  }
}

int AlikeRows::before(const exchange::CsvRow& row) const {
  auto lines = exchange::cell_at(row, file_.position_of(exchange::rejected_alike_column));
  while (!lines.empty()) {
    const auto line = lines.substr(0, lines.find('\n'));
    lines.remove_prefix(std::min(lines.size(), line.size() + 1));
    for (std::size_t i = 0; i < names_.size(); ++i) {
      const auto start = fmt::format("{} {} = ", names_[i], exchange::cell_at(row, positions_[i]));
      int number = 0;
      if (line.starts_with(start)) {
        std::from_chars(line.data() + start.size(), line.data() + line.size(), number);
        if (number > 0 && number < 1'000'000) return number;
      }
    }
  }
  return 0;
}

}  // namespace sparewell::desk
