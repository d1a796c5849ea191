/// What stands of the claim lines once reversals and replacements are taken into account.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// A claim line, or what earlier reversals left of it. Lines without pieces and without money do
/// not stand.
struct LiveLine {
  std::size_t line = 0;  ///< in Clinic::claim_lines
  int quantity = 0;
  std::optional<Money> charge;
};

/// What a reversal takes back beyond what was billed.
struct LooseReversal {
  std::size_t line = 0;
  int quantity = 0;            ///< 0: only the amount differs from what was billed
  std::optional<Money> money;  ///< above zero: more was taken back than billed
};

/// Of the claim lines of one currency that take nothing back: charged = replaced + reversed + what
/// stands.
struct NetAmounts {
  std::int64_t charged = 0;   ///< minor units
  std::int64_t replaced = 0;  ///< stood in place of
  std::int64_t reversed = 0;  ///< taken back
};

struct NetClaims {
  std::vector<LiveLine> live;  ///< in the order given
  std::vector<LooseReversal> loose;
  std::map<Currency, NetAmounts> amounts;
};

/// `lines`: positions of the claim lines of one patient. A replacement stands in place of the
/// claim that it names, else of the lines of the same claim that are not replacements. A reversal
/// takes back pieces of lines of the claim that it names, else of its own, with the same code, side
/// and day of service; of a claim that is nowhere else, of any line of that code, side, day and
/// amount. A line of the same quantity comes first.
[[nodiscard]] NetClaims net_claims(const Clinic& clinic, std::span<const std::size_t> lines);

}  // namespace sparewell::billing
