/// Exact tests of counts, and many of them at once without too many false alarms.
#pragma once

#include <span>
#include <vector>

namespace sparewell::wear {

/// P(N >= count) where N is the number of successes of independent trials with these chances, each
/// 0 to 1: the Poisson-binomial upper tail, the binomial one when all chances are equal. Exact but
/// for rounding; only positive numbers are added, so small tails keep their digits. Time grows with
/// trials times count. Throws std::invalid_argument for a chance outside 0 to 1.
[[nodiscard]] double chance_of_at_least(int count, std::span<const double> chances);

/// P values adjusted by Benjamini and Hochberg (1995), "Controlling the false discovery rate", J.
/// R. Statist. Soc. B 57, 289-300, in the order given. Calling all tests with an adjusted value of
/// at most q a discovery keeps the expected share of false ones among them at q or below, when the
/// tests are independent or positively dependent. Throws std::invalid_argument for a value outside
/// 0 to 1.
[[nodiscard]] std::vector<double> adjusted_for_false_discoveries(std::span<const double> p_values);

}  // namespace sparewell::wear
