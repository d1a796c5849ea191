/// All items of a clinic looked at under one policy: what the proposal and its what-ifs are made
/// of.
#pragma once

#include <optional>
#include <vector>

#include "supply/lead_time.hpp"
#include "supply/stocked_line.hpp"

namespace sparewell::supply {

/// One item; stocked, or ordered for patients, or neither when nothing is to be ordered of it.
struct Considered {
  std::optional<StockedItem> stocked;
  std::optional<ProposalLine> for_patients;
};

/// Refers to the clinic, `lives` and `policy`, which must outlive it.
class Consideration {
 public:
  Consideration(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                const OrderPolicy& policy);
  Consideration(const Consideration&) = delete;
  Consideration& operator=(const Consideration&) = delete;

  /// By position in Clinic::items; the lines of one supplier have been taken together.
  [[nodiscard]] std::vector<Considered>& items() { return items_; }
  /// The lines within the budget. Takes them out of items(): call it last.
  [[nodiscard]] Proposal proposal();

 private:
  /// What is booked is certain need, and not left to chance too.
  void take_out_booked(const LeadTimes& lead_times);
  void join_orders();

  const Clinic& clinic_;
  const OrderPolicy& policy_;
  ClinicIndex index_;
  StockBook book_;
  ClinicDemand demand_;
  std::vector<Considered> items_;
};

}  // namespace sparewell::supply
