/// Credits that suppliers owe.
#pragma once

#include <map>

#include "billing/supplier_match.hpp"

namespace sparewell::billing {

/// credit_due: returns to suppliers that are open after `credit_days`, with what is outstanding;
/// and parts taken back from patients in a recall, at most `claim_days` ago, that were not sent to
/// their supplier `credit_days` after the first, with the item's unit cost (Cause::not_recorded).
[[nodiscard]] std::vector<BillingFinding> credit_findings(const Clinic& clinic, Date today,
                                                          const SupplierTerms& terms = {});

/// Positions of units that have ended, put into the order of their endings.
void sort_by_end(const Clinic& clinic, std::vector<std::size_t>& units);

/// Pieces sent back to suppliers, to be set off against parts that should have gone there.
class SentBack {
 public:
  explicit SentBack(const Clinic& clinic);

  /// Takes one piece of the item and lot that was sent on `since` or later; false when there is
  /// none left. Asked in the order of the days.
  [[nodiscard]] bool take(const Unit& unit, Date since);

 private:
  struct Pieces {
    Date sent_on;
    int quantity = 0;
  };
  std::map<std::pair<ItemCode, std::string>, std::vector<Pieces>> by_lot_;  ///< by day
};

}  // namespace sparewell::billing
