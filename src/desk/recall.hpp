/// A recall: looks up who and what it touches, and takes the stock out of use.
#pragma once

#include <string>
#include <vector>

#include "clinic/item.hpp"
#include "store/port.hpp"
#include "supply/recall.hpp"

namespace sparewell::desk {

struct RecallNotice {
  Item item;
  supply::Recall found;
};

/// Reads what is recorded of one item, and nothing else. `lot` is "" for all its lots. Refuses an
/// item that the catalogue does not have.
[[nodiscard]] Expected<RecallNotice> look_up_recall(const store::Snapshot& snapshot,
                                                    const ItemCode& item, const std::string& lot,
                                                    Date today);

/// Moves the recalled pieces that lie on shelves to the place "quarantine", all or none, each
/// movement with the author's reason. What has been moved already is not moved again. Returns the
/// stock as it lay before. Throws store::StoreFailure, and then nothing was moved.
std::vector<StockLevel> quarantine_recalled(store::Store& store, const ItemCode& item,
                                            const std::string& lot, Date today,
                                            const store::Author& author);

}  // namespace sparewell::desk
