#include "supply/lead_time.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace sparewell::supply {

LeadTime::LeadTime(int quoted_days, bool assumed, const std::map<int, int>& deviations,
                   const std::map<int, int>& own)
    : assumed_{assumed} {
  std::map<int, double> weight{{std::max(quoted_days, 0), quoted_weight}};
  for (const auto& [late, times] : deviations) {
    weight[std::max(quoted_days + late, 0)] += times;
    receipts_ += times;
  }
  double total = quoted_weight + receipts_;
  int own_total = 0;
  for (const auto& [late, times] : own) own_total += times;
  if (own_total >= least_own_receipts) {
    own_receipts_ = own_total;
    for (auto& [days, w] : weight) w *= supplier_weight / total;
    for (const auto& [late, times] : own) weight[std::max(quoted_days + late, 0)] += times;
    total = supplier_weight + own_total;
  }
  for (const auto& [days, w] : weight) distribution_.push_back({days, w / total});
}

double LeadTime::mean() const {
  double sum = 0;
  for (const Day& day : distribution_) sum += day.chance * day.days;
  return sum;
}

int LeadTime::mean_days() const {
  return static_cast<int>(std::lround(mean()));
}

int LeadTime::quantile(double p) const {
  if (!(p > 0 && p < 1)) throw std::invalid_argument("a quantile lies between 0 and 1");
  double sum = 0;
  for (const Day& day : distribution_) {
    sum += day.chance;
    if (sum >= p - 1e-12) return day.days;
  }
  return distribution_.back().days;
}

LeadTimes::LeadTimes(const Clinic& clinic) {
  const ClinicIndex index{clinic};
  for (const OrderLine& line : clinic.order_lines) {
    if (line.state != OrderState::placed || !line.received_on) continue;
    if (line.received_quantity < line.quantity) continue;
    const Item* item = index.item(line.item);
    if (item == nullptr) continue;
    const int taken = days_between(line.ordered_on, *line.received_on);
    if (taken < 0) continue;  // received before it was ordered: a mistake in the record
    const int late = taken - item->lead_days.value_or(assumed_lead_days);
    ++deviations_[line.supplier][late];
    if (line.supplier == item->supplier) ++own_[line.item][late];
  }
}

LeadTime LeadTimes::of(const Item& item) const {
  static const std::map<int, int> none;
  const auto found = deviations_.find(item.supplier);
  if (found == deviations_.end() || item.supplier.empty()) {
    return LeadTime{item.lead_days.value_or(assumed_lead_days), !item.lead_days.has_value(), none};
  }
  const auto own = own_.find(item.code);
  return LeadTime{item.lead_days.value_or(assumed_lead_days), !item.lead_days.has_value(),
                  found->second, own == own_.end() ? none : own->second};
}

}  // namespace sparewell::supply
