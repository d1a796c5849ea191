#include "billing/code_table.hpp"

#include <algorithm>

namespace sparewell::billing {

CodeTable::CodeTable(std::span<const BillingCode> rows) {
  for (const BillingCode& row : rows) {
    const auto same = [&](const BillingCode& other) {
      return other.list == row.list && other.valid_from == row.valid_from;
    };
    auto& places = by_code_[row.code];
    const auto before =
        std::ranges::find_if(places, [&](std::size_t place) { return same(rows_[place]); });
    if (before != places.end()) {
      rows_[*before] = row;
    } else {
      places.push_back(rows_.size());
      rows_.push_back(row);
    }
  }
  for (auto& [code, places] : by_code_) {
    std::ranges::stable_sort(places, [&](std::size_t a, std::size_t b) {
      return rows_[a].valid_from > rows_[b].valid_from;
    });
  }
}

const BillingCode* CodeTable::find(const std::string& code, Date day) const {
  const auto found = by_code_.find(code);
  if (found == by_code_.end()) return nullptr;
  const auto valid = std::ranges::find_if(
      found->second, [&](std::size_t place) { return rows_[place].valid_on(day); });
  return valid == found->second.end() ? nullptr : &rows_[*valid];
}

}  // namespace sparewell::billing
