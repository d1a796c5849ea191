/// The sheet that a person takes to the shelf, fills in, and brings back.
#pragma once

#include <string_view>
#include <vector>

#include "exchange/list_workbook.hpp"
#include "supply/count_plan.hpp"

namespace sparewell::desk {

/// Titles by which a sheet that was filled in is read back.
namespace count_titles {
inline constexpr std::string_view item = "Item";
inline constexpr std::string_view lot = "Lot";
inline constexpr std::string_view use_by = "Use by";
inline constexpr std::string_view recorded = "In the records";
inline constexpr std::string_view counted = "Counted";
inline constexpr std::string_view remark = "Remark";
inline constexpr std::string_view place = "Place";
}  // namespace count_titles

/// One row a lot, in the order of the plan. What the records say stands beside, or in a hidden
/// column when `blind`: whoever counts then does not see it, but a row that moved meanwhile is
/// still found out. Names no patient.
[[nodiscard]] exchange::ListWorkbook count_sheet(
    const std::vector<supply::CountCandidate>& candidates, const Clinic& clinic, Date today,
    bool blind);

}  // namespace sparewell::desk
