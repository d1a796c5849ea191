/// A recall in words: the call list, the shelves, the open orders.
#pragma once

#include <string>
#include <vector>

#include "desk/recall.hpp"

namespace sparewell::desk {

/// Whether the call list gives names beside the clinic's references.
enum class Names { left_out, shown };

/// "1 patient has a part of it, 2 had one; 4 pieces lie on shelves; 1 order line is open."
[[nodiscard]] std::string recall_summary(const supply::Recall& recall);

/// The whole list, in lines: what is recalled, the summary, patients with a part in hands, patients
/// who had one, shelves, open orders, and recall_caution().
[[nodiscard]] std::vector<std::string> recall_lines(const RecallNotice& notice, Names names);

/// "4 pieces of lot A12 were moved from main store to quarantine.", a line a shelf; one line when
/// there was nothing to move.
[[nodiscard]] std::vector<std::string> quarantine_lines(const std::vector<StockLevel>& moved);

/// "recalled", "written alike", "not recorded": for files that programs read.
[[nodiscard]] std::string lot_match_words(supply::LotMatch match);

/// To stand on every such list.
[[nodiscard]] std::string recall_caution();

}  // namespace sparewell::desk
