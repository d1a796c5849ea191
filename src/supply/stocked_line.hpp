/// Periodic review, order-up-to, for items kept in stock.
#pragma once

#include <optional>

#include "supply/item_case.hpp"

namespace sparewell::supply {

/// A need below this chance is left out of a line's reason.
inline constexpr double least_named_chance = 0.005;
/// The most needs that a stocked line's reason names.
inline constexpr std::size_t most_named_needs = 20;

/// The stock must last from today until what is ordered on the next order day has arrived: the
/// target is the least s with P(demand in that interval <= s) >= the service target (order-up-to
/// level of periodic review; "Fundamentals of Supply Chain Theory", 2nd ed. 2019, section 4.3,
/// with the interval's end random). Empty when the position reaches the target.
[[nodiscard]] std::optional<ProposalLine> stocked_line(const ItemCase& given);

}  // namespace sparewell::supply
