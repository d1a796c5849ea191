#include "desk/table.hpp"

#include <algorithm>
#include <numeric>

namespace sparewell::desk {
namespace {

/// Negative, zero or positive, as `a` comes before, with or after `b`.
int compare(const Cell& a, const Cell& b, bool ascending) {
  const int sign = ascending ? 1 : -1;
  if (a.number && b.number) {
    if (*a.number == *b.number) return 0;
    return *a.number < *b.number ? -sign : sign;
  }
  if (a.number || b.number) return a.number ? -1 : 1;
  return sign * folded(a.text).compare(folded(b.text));
}

}  // namespace

Table::Table(std::vector<Column> columns) : columns_{std::move(columns)} {}

void Table::fill(std::vector<TableRow> rows) {
  rows_ = std::move(rows);
  arrange();
}

void Table::find(std::string_view typed) {
  words_ = FindWords{typed};
  arrange();
}

void Table::require(unsigned marks) {
  marks_ = marks;
  arrange();
}

void Table::sort_by(std::size_t column, bool ascending) {
  sort_column_ = column;
  ascending_ = ascending;
  arrange();
}

void Table::sort_naturally() {
  sort_column_.reset();
  arrange();
}

std::optional<std::size_t> Table::position_of(std::string_view id) const {
  for (std::size_t i = 0; i < shown_.size(); ++i) {
    if (at(i).id == id) return i;
  }
  return std::nullopt;
}

void Table::arrange() {
  shown_.clear();
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const auto& row = rows_[i];
    if ((row.marks & marks_) == marks_ && words_.match(row.search)) shown_.push_back(i);
  }
  if (sort_column_) sort_rows(shown_);
}

void Table::sort_rows(std::vector<std::size_t>& order) const {
  const auto column = *sort_column_;
  std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
    return compare(rows_[a].cells[column], rows_[b].cells[column], ascending_) < 0;
  });
}

}  // namespace sparewell::desk
