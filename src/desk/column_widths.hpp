/// How a table's columns share the width there is.
#pragma once

#include <vector>

namespace sparewell::desk {

/// Widths in any one unit, such as pixels.
struct ColumnRoom {
  int wanted = 0;   ///< when there is neither too much width nor too little
  int least = 0;    ///< below this the column is of no use; at most `wanted`
  int stretch = 0;  ///< its part of width left over; 0 keeps it at `wanted`
};

/// The least width of a stretching column that wants `wanted`: most of its texts stay readable.
[[nodiscard]] int least_width(int wanted);

/// One width a column. Width left over goes to the stretching columns by their parts; missing width
/// is taken from them, down to `least`, by what each can give. Where even that is not enough the
/// sum exceeds `available`, and the table scrolls.
[[nodiscard]] std::vector<int> column_widths(const std::vector<ColumnRoom>& columns, int available);

}  // namespace sparewell::desk
