/// What was handed out beside what was billed.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "billing/code_table.hpp"
#include "billing/finding.hpp"
#include "billing/pairing.hpp"
#include "billing/rule_book.hpp"

namespace sparewell::billing {

/// Pieces that were handed out and are billed.
struct PairedPieces {
  std::vector<std::size_t> units;  ///< positions in Clinic::units
  std::size_t claim_line = 0;      ///< position in Clinic::claim_lines
  Agreement agreement = Agreement::exact;
  int days_apart = 0;          ///< from the issue to the service; below zero: billed before
  bool part_of_line = false;   ///< the line has further pieces
  bool part_of_issue = false;  ///< that day's issue of the item has further pieces
  std::optional<Money> money;  ///< these pieces' share of the line's charge
};

/// Why a part or a line stands alone, seen from the nearest one that it might have gone with.
enum class WhyAlone {
  nothing_near,    ///< there is none of the code, or of its kind
  paired_already,  ///< the nearest stands for others
  too_far,         ///< in days
  other_side,      ///< and something else differs as well
  other_code,      ///< likewise
  no_part,         ///< the line is about work, not about parts
  need_not         ///< the part came back, or either lies before the books
};

/// Pieces without the other side: units, or pieces of a claim line.
struct Leftover {
  std::vector<std::size_t> units;
  std::optional<std::size_t> claim_line;
  int quantity = 0;
  std::optional<Money> money;  ///< of the line's charge
  WhyAlone why = WhyAlone::nothing_near;
  /// The nearest of the other side: a claim line for units, a unit for a claim line.
  std::optional<std::size_t> nearest = {};
};

/// Minor units of one currency: charged = replaced + reversed + before_books + paired + alone.
struct BookTotals {
  Currency currency;
  std::int64_t charged = 0;       ///< all lines that take nothing back
  std::int64_t replaced = 0;      ///< by later claims
  std::int64_t reversed = 0;      ///< taken back
  std::int64_t before_books = 0;  ///< standing, of services before the books begin
  std::int64_t paired = 0;        ///< the sum over `pairs`
  std::int64_t alone = 0;         ///< the sum over `leftovers`
};

struct ClaimBooks {
  std::vector<BillingFinding> findings;  ///< sorted
  std::vector<PairedPieces> pairs;       ///< by patient and day of issue
  std::vector<Leftover> leftovers;       ///< by patient; units first
  std::vector<BookTotals> totals;        ///< by currency
};

/// `clinic` as it was known at the end of `today` (as_of). The result does not depend on the order
/// of its records.
[[nodiscard]] ClaimBooks reconcile_claims(const Clinic& clinic, const CodeTable& codes,
                                          const RuleBook& rules, Date today);

}  // namespace sparewell::billing
