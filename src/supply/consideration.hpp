/// All items of a clinic looked at under one policy: what the proposal and its what-ifs are made
/// of.
#pragma once

#include <optional>
#include <vector>

#include "supply/order_outlook.hpp"
#include "supply/stocked_line.hpp"

namespace sparewell::supply {

/// One item; stocked, or ordered for patients, or neither when nothing is to be ordered of it.
struct Considered {
  std::optional<StockedItem> stocked;
  std::optional<ProposalLine> for_patients;
};

/// Refers to `outlook` and `policy`, which must outlive it. `policy` must be of the day of
/// `outlook`, otherwise throws std::invalid_argument.
class Consideration {
 public:
  Consideration(OrderOutlook& outlook, const OrderPolicy& policy);
  Consideration(const Consideration&) = delete;
  Consideration& operator=(const Consideration&) = delete;

  /// By position in Clinic::items; the lines of one supplier have been taken together.
  [[nodiscard]] std::vector<Considered>& items() { return items_; }
  /// The lines within the budget. Takes them out of items(): call it last.
  [[nodiscard]] Proposal proposal();

 private:
  void join_orders();

  const Clinic& clinic_;
  const ClinicIndex& index_;
  const OrderPolicy& policy_;
  std::vector<Considered> items_;
};

}  // namespace sparewell::supply
