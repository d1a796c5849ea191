/// The sheet that a person takes to the shelf, fills in, and brings back.
#pragma once

#include <vector>

#include "clinic/say.hpp"
#include "exchange/list_workbook.hpp"
#include "supply/count_plan.hpp"

namespace sparewell::desk {

/// Titles by which a sheet that was filled in is read back; shown with said.
namespace count_titles {
inline constexpr auto item = to_say("Item");
inline constexpr auto lot = to_say("Lot");
inline constexpr auto use_by = to_say("Use by");
inline constexpr auto recorded = to_say("In the records");
inline constexpr auto counted = to_say("Counted");
inline constexpr auto remark = to_say("Remark");
inline constexpr auto place = to_say("Place");
}  // namespace count_titles

/// One row a lot, in the order of the plan. What the records say stands beside, or in a hidden
/// column when `blind`: whoever counts then does not see it, but a row that moved meanwhile is
/// still found out. Names no patient.
[[nodiscard]] exchange::ListWorkbook count_sheet(
    const std::vector<supply::CountCandidate>& candidates, const Clinic& clinic, Date today,
    bool blind);

}  // namespace sparewell::desk
