/// All that orders written on one day rest on, whatever the service target, the budget and the
/// costs: orders under another policy of the same day follow from it quickly.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "supply/clinic_demand.hpp"
#include "supply/demand_ahead.hpp"
#include "supply/item_case.hpp"
#include "supply/lead_time.hpp"
#include "supply/stock_position.hpp"

namespace sparewell::supply {

/// Refers to the clinic and `lives`, which must outlive it. For one consideration at a time.
class OrderOutlook {
 public:
  /// Orders are written on `order_on`; empty, or before today: today.
  OrderOutlook(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
               std::optional<Date> order_on);
  OrderOutlook(const OrderOutlook&) = delete;
  OrderOutlook& operator=(const OrderOutlook&) = delete;

  [[nodiscard]] const Clinic& clinic() const { return clinic_; }
  [[nodiscard]] const ClinicIndex& index() const { return index_; }
  [[nodiscard]] Date today() const { return demand_.today(); }
  [[nodiscard]] Date order_on() const { return order_on_; }

  /// The case of the item at this position in Clinic::items. `policy` must be of the same day,
  /// otherwise throws std::invalid_argument.
  [[nodiscard]] ItemCase case_of(std::size_t item, const OrderPolicy& policy) const;
  /// Its demand; different items may be asked for by different threads.
  [[nodiscard]] DemandAhead& demand(std::size_t item, const ItemCase& given);
  /// What is to be ordered of an item that is ordered for patients. Only what the line says of the
  /// service target differs between policies.
  [[nodiscard]] std::optional<ProposalLine> for_patients(std::size_t item, const ItemCase& given);

 private:
  /// What is booked is certain need, and not left to chance too.
  void take_out_booked();

  const Clinic& clinic_;
  Date order_on_;
  ClinicIndex index_;
  StockBook book_;
  LeadTimes lead_times_;
  ClinicDemand demand_;
  struct OfItem {
    std::unique_ptr<DemandAhead> demand;
    bool looked_at = false;
    std::optional<ProposalLine> for_patients;
  };
  std::vector<OfItem> items_;
};

}  // namespace sparewell::supply
