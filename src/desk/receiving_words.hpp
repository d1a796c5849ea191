/// A delivery in words.
#pragma once

#include <string>
#include <vector>

#include "desk/receiving.hpp"

namespace sparewell::desk {

/// Why a delivery is refused because of its order, and what to do; "" when it is not refused.
[[nodiscard]] std::string match_refusal(const ReceivingOutcome& outcome,
                                        const std::string& order_ref);

/// What has to be looked at, a sentence each: a wrong item, several orders, and the findings.
[[nodiscard]] std::vector<std::string> finding_sentences(const ReceivingOutcome& outcome);
[[nodiscard]] std::string finding_words(const supply::ReceivingFinding& finding,
                                        const ReceivingOutcome& outcome);

/// What was recorded, a line each, or that nothing was.
[[nodiscard]] std::vector<std::string> receipt_lines(const ReceivingOutcome& outcome);

/// "PO-7  Tern  LS10-22: 3 of 5 pieces to come, ordered 1 Nov 2026, expected 8 Nov 2026, 17 days
/// overdue".
[[nodiscard]] std::string expected_line_words(const supply::ExpectedLine& expected);
/// The same of an order line alone: "PO-7  Tern  LS10-22: 3 of 5 pieces to come, ordered ...".
[[nodiscard]] std::string open_line_words(const OrderLine& line);

/// "over_delivered", "no_use_by" ...: for files that programs read.
[[nodiscard]] std::string finding_key(supply::ReceivingFinding::Kind kind);

}  // namespace sparewell::desk
