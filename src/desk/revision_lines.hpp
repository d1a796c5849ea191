/// The lines of an order as a revision held them, beside those of the revision before it.
#pragma once

#include <string>
#include <vector>

#include "clinic/order_record.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

struct RevisionLine {
  OrderRevisionLine line;
  bool dropped = false;  ///< the revision before held it, and this one does not
  std::string change;    ///< "3 instead of 5 pieces", "added", "dropped"; "" when it is as before
};

/// The lines of a revision in their order, then those that it dropped. Lines of one item are set
/// side by side in the order in which they stand. `before` is nullptr for the first revision, of
/// which nothing is called a change.
[[nodiscard]] std::vector<RevisionLine> revision_lines(
    const std::vector<OrderRevisionLine>& lines, const std::vector<OrderRevisionLine>* before);

[[nodiscard]] std::vector<Column> revision_columns();
/// For revision_columns(); what was changed is strong.
[[nodiscard]] std::vector<TableRow> revision_rows(const std::vector<RevisionLine>& lines);

}  // namespace sparewell::desk
