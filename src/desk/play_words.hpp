/// What came of playing ways of ordering beside one another, in words.
#pragma once

#include <string>
#include <vector>

#include "supply/play/simulate.hpp"

namespace sparewell::desk {

/// "Sparewell, 95 %", "By cost, 95 %", "Min-max, 1.5 x", "Min-max, 1.5 x down", "Order when empty".
[[nodiscard]] std::string setting_words(const supply::play::Setting& setting);

/// What was played: "The last 12 months, EUR", "20 futures of 12 months, EUR".
[[nodiscard]] std::string played_title(const supply::play::Played& played, int months);

/// How ours did at the present service target, and how much less or more money min-max needs in
/// stock for the same share of pieces, with what is left open; one or two sentences.
[[nodiscard]] std::string saving_words(const supply::play::Played& played, double service);

/// What targets by cost would need for the share that Sparewell has now; one or two sentences.
[[nodiscard]] std::string by_cost_words(const supply::play::Played& played);

/// How the play goes and what it leaves out, a sentence each.
[[nodiscard]] std::vector<std::string> play_notes(const supply::play::Simulation& simulation);

/// A mean amount in the smallest unit, as whole units of the currency: "12,340 EUR".
[[nodiscard]] std::string whole_amount(double minor, const Currency& currency);

/// "97.3 %": a share of pieces.
[[nodiscard]] std::string share_words(double share);

}  // namespace sparewell::desk
