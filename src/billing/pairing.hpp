/// Which pieces that were handed out are which pieces that were billed.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "billing/code_likeness.hpp"
#include "billing/scope.hpp"

namespace sparewell::billing {

/// Pieces handed to one patient on one day, alike in all that billing asks.
struct Issue {
  ItemCode item;
  std::string code;
  Kind kind = Kind::liner;
  Side side = Side::left;
  Date day;
  Standing standing = Standing::expected;
  std::vector<std::size_t> units;  ///< in Clinic::units
};

/// A claim line that stands, in whole or in part.
struct Billed {
  std::size_t position = 0;  ///< in Clinic::claim_lines
  const ClaimLine* line = nullptr;
  std::optional<Side> side;
  int quantity = 0;
  std::optional<Money> charge;
  bool before_books = false;  ///< so shortly before the books begin that its part may lie within
};

/// How issue and line agree; the worst that holds.
enum class Agreement {
  exact,
  days_apart,    ///< by `ordinary_days` at most
  initial_code,  ///< billed under the code of a first part
  side_missing,  ///< on the line
  came_back,     ///< the part was returned soon, and yet it is billed
  side_differs,
  code_differs,
  code_unknown,
  far_apart  ///< in days, beyond what is ordinary
};

/// Beyond so many days a part and a line are two findings, not one with a mistaken date.
inline constexpr int farthest_days = 45;

/// What a pair of pieces costs and what leaving one alone costs: whole numbers without a unit. Any
/// pair allowed costs less than leaving both its sides alone, and two pairs with dates far off cost
/// more than one pair with the right date and two pieces alone, so that a line left out in a row of
/// them does not move the others along.
struct Likely {
  std::int64_t cost = 0;
  Agreement agreement = Agreement::exact;
};
inline constexpr std::int64_t cost_alone = 200;

/// Empty where the two cannot mean the same.
[[nodiscard]] std::optional<Likely> likely(const Issue& issue, const Billed& billed,
                                           const CodeLikeness& likeness);
/// Of a piece; nothing is amiss when one stays alone that need not have another side.
[[nodiscard]] std::int64_t cost_alone_of(const Issue& issue);
[[nodiscard]] std::int64_t cost_alone_of(const Billed& billed);

/// Some pieces of an issue paired with as many of a line.
struct Pieces {
  std::size_t issue = 0;
  std::size_t billed = 0;
  int quantity = 0;
  Agreement agreement = Agreement::exact;
};

/// The pairs of least cost in total: a minimum-cost flow (network simplex), each group of issues
/// and lines that may belong together for itself. Among equals whole lines go before split ones,
/// and earlier ones before later ones. Issues and lines are those of one patient, in an order that
/// says what goes first.
[[nodiscard]] std::vector<Pieces> pair_pieces(std::span<const Issue> issues,
                                              std::span<const Billed> lines,
                                              const CodeLikeness& likeness);

}  // namespace sparewell::billing
