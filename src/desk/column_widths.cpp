#include "desk/column_widths.hpp"

#include <algorithm>

namespace sparewell::desk {
namespace {

/// Adds `amount`, which may be negative, to the widths in proportion to `parts`, rounded so that
/// nothing of it is lost.
void spread(int amount, const std::vector<int>& parts, std::vector<int>& widths) {
  long long parts_left = 0;
  for (const int part : parts) parts_left += part;
  for (std::size_t i = 0; i < widths.size() && parts_left > 0; ++i) {
    const auto given = static_cast<int>(static_cast<long long>(amount) * parts[i] / parts_left);
    widths[i] += given;
    amount -= given;
    parts_left -= parts[i];
  }
}

}  // namespace

int least_width(int wanted) {
  return wanted * 3 / 4;
}

std::vector<int> column_widths(const std::vector<ColumnRoom>& columns, int available) {
  std::vector<int> widths;
  std::vector<int> stretches;
  std::vector<int> slack;
  int wanted = 0;
  int most_taken = 0;
  for (const ColumnRoom& column : columns) {
    widths.push_back(column.wanted);
    stretches.push_back(column.stretch);
    slack.push_back(column.stretch > 0 ? column.wanted - column.least : 0);
    wanted += column.wanted;
    most_taken += slack.back();
  }
  const int spare = available - wanted;
  spread(std::max(spare, -most_taken), spare > 0 ? stretches : slack, widths);
  return widths;
}

}  // namespace sparewell::desk
