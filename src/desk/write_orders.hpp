/// Turns a proposal into numbered orders and their workbooks.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "desk/assessment.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct WrittenOrder {
  std::string number;  ///< "" for the list of items that no supplier is known for
  SupplierName supplier;
  std::filesystem::path file;  ///< "" when it was not written because it waits for approval
  int lines = 0;
  int pieces = 0;
  std::string waiting = {};  ///< why it cannot be sent yet; "" when it can
};

enum class ForSending { no, yes };

/// Writes one workbook a supplier into `folder` (made when missing) and keeps the orders as drafts.
/// A draft that says the same as an earlier one (items, quantities, costs) keeps its number and is
/// dated today; one that says something else takes a new number and the supplier's earlier drafts
/// are cancelled. Drafts do not count as on order. A supplier with nothing to order keeps the
/// drafts that it has.
///
/// Items whose catalogue line names no supplier, or one that is not known, cannot be ordered: they
/// come last, in a workbook of their own that says so, without a number and without a draft.
///
/// The drafts are stored before any file is written. Throws store::StoreFailure, and then nothing
/// is stored or written; or std::runtime_error when a file cannot be written: its draft is kept,
/// the sentence names it, and the other workbooks are written.
///
/// When the workbooks go to the suppliers at once (`for_sending`), orders that wait for approval
/// are kept as drafts and not written.
[[nodiscard]] std::vector<WrittenOrder> write_orders(store::Store& store,
                                                     const Assessment& assessment,
                                                     const std::filesystem::path& folder,
                                                     const store::Author& author,
                                                     ForSending for_sending = ForSending::no);

struct SentOrders {
  std::vector<std::string> placed;   ///< numbers
  std::vector<std::string> waiting;  ///< a sentence for each that waits for approval
};

/// Marks draft orders as sent to the supplier: from then on they count as on order, as ordered on
/// the day that they were last written. Those that wait for approval stay drafts; numbers without a
/// draft change nothing.
[[nodiscard]] SentOrders mark_as_sent(store::Store& store,
                                      const std::vector<std::string>& order_numbers, Date today,
                                      const store::Author& author);

}  // namespace sparewell::desk
