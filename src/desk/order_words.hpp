/// The life of an order in words.
#pragma once

#include <string>

#include "store/port.hpp"
#include "supply/order_life.hpp"

namespace sparewell::desk {

/// "draft", "waiting for approval", "placed", "partly received", "received", "cancelled".
[[nodiscard]] std::string stage_words(supply::OrderStage stage);
/// The same for files that programs read: "waiting_for_approval".
[[nodiscard]] std::string stage_key(supply::OrderStage stage);

/// "612.00 EUR", "612.00 EUR and 3 pieces without a known cost in EUR".
[[nodiscard]] std::string worth_words(const supply::OrderWorth& worth);
/// "order X comes to 612.00 EUR, above the 500.00 EUR from which ...".
[[nodiscard]] std::string worth_sentence(const supply::Order& order, const Money& limit);
/// Why a draft cannot be placed yet, and what to do.
[[nodiscard]] std::string waiting_sentence(const supply::Order& order, const Money& limit);

/// The order's header with a named person's approval of what its lines now come to, in the currency
/// of the clinic's limit, or else of the clinic.
[[nodiscard]] OrderHeader approved_header(const store::Snapshot& snapshot,
                                          const supply::Order& order,
                                          const std::string& approved_by, Date today);
[[nodiscard]] std::string approved_sum_words(const OrderHeader& header);

}  // namespace sparewell::desk
