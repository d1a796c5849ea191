/// Items that are never stocked: ordered for a named patient when their part is about to wear out.
#pragma once

#include <optional>

#include "supply/item_case.hpp"

namespace sparewell::supply {

/// The wear quantile and the lead-time quantile of an order-by date (our choice).
inline constexpr double early_quantile = 0.1;
inline constexpr double late_arrival_quantile = 0.9;

/// Each unit in use has an order-by date: the day by which it is worn out with a chance of 10 %,
/// less the days within which 90 % of orders arrive. Pieces on the shelf and on order go to
/// reservations first, the soonest first (each covers a unit of its patient), and then to the most
/// urgent units. What is then uncovered and would be ordered too late on the next order day is
/// ordered today, with promised pieces that are due and not there. Nothing is ordered ahead for a
/// possible loss or change. Empty when nothing is to be ordered. The line's target is what is on
/// hand, on order and needed; its needs are all the units it is for.
[[nodiscard]] std::optional<ProposalLine> patient_order_line(const ItemCase& given);

}  // namespace sparewell::supply
