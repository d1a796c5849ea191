/// How long a supplier takes from order to receipt, learned from what was received.
#pragma once

#include <map>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// Days assumed for an item whose catalogue line quotes none (common practice, no source).
inline constexpr int assumed_lead_days = 14;
/// What the quoted days weigh, in received order lines (our choice): after five receipts the
/// supplier's record counts as much as the quotation.
inline constexpr double quoted_weight = 5;

/// An item with so many receipts of its own has its own record (our choice).
inline constexpr int least_own_receipts = 10;
/// What the supplier's record then weighs, in the item's own receipts (our choice).
inline constexpr double supplier_weight = 10;

/// A discrete distribution over whole days.
class LeadTime {
 public:
  struct Day {
    int days = 0;
    double chance = 0;
  };

  /// The predictive distribution of a Dirichlet process: the quoted days as base with weight
  /// quoted_weight, and quoted days plus each deviation seen (days late, negative when early; how
  /// often), floored at 0. Blackwell and MacQueen's urn, Annals of Statistics 1 (1973) 353-355,
  /// from memory. With least_own_receipts or more in `own`, the deviations of the item itself, that
  /// is the base of one more urn with weight supplier_weight, to which they are added.
  LeadTime(int quoted_days, bool assumed, const std::map<int, int>& deviations,
           const std::map<int, int>& own = {});

  /// Ascending days, each named once, with chances that sum to 1.
  [[nodiscard]] const std::vector<Day>& distribution() const { return distribution_; }
  [[nodiscard]] double mean() const;
  /// The mean as whole days, halves up.
  [[nodiscard]] int mean_days() const;
  /// The least number of days with P(lead time <= days) >= p, 0 < p < 1.
  [[nodiscard]] int quantile(double p) const;
  /// True when the catalogue quotes no days.
  [[nodiscard]] bool assumed() const { return assumed_; }
  /// Received order lines that it was learned from.
  [[nodiscard]] int receipts() const { return receipts_; }
  /// Of these, receipts of the item itself that make a record of its own; 0 when they are too few.
  [[nodiscard]] int own_receipts() const { return own_receipts_; }

 private:
  std::vector<Day> distribution_;
  bool assumed_;
  int receipts_ = 0;
  int own_receipts_ = 0;
};

/// The lead time of every item. Deviations are shared by all items of one supplier: days from order
/// to the last receipt, less the days quoted (or assumed) for the item of that line; an item with
/// enough receipts of its own has its own record beside theirs. Only lines
/// received in full count; a line with pieces still to come has no end yet.
class LeadTimes {
 public:
  explicit LeadTimes(const Clinic& clinic);
  [[nodiscard]] LeadTime of(const Item& item) const;

 private:
  std::unordered_map<SupplierName, std::map<int, int>> deviations_;
  /// Of the item where it is bought now.
  std::unordered_map<ItemCode, std::map<int, int>> own_;
};

}  // namespace sparewell::supply
