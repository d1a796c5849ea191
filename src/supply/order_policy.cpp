#include "supply/order_policy.hpp"

#include <algorithm>

#include "supply/order_cost.hpp"

namespace sparewell::supply {
namespace {

// However dear a missing piece is, the target stays a chance.
constexpr double highest = 0.9999;
constexpr double lowest = 0.01;

}  // namespace

OrderPolicy policy_of(const ClinicSettings& settings) {
  return {settings.service_target, settings.costs, std::nullopt, std::nullopt, {}};
}

WantedChance wanted_chance(const OrderPolicy& policy, const Item& item, int days_until_next_order) {
  const auto& shortage = policy.costs.shortage;
  if (!shortage || !item.unit_cost || shortage->currency != item.unit_cost->currency) {
    return {policy.service_target, std::nullopt};
  }
  const double leftover = static_cast<double>(item.unit_cost->minor) * policy.costs.holding_rate *
                          std::max(days_until_next_order, 1) / 365;
  if (!(leftover > 0)) return {policy.service_target, std::nullopt};
  const auto missing = static_cast<double>(std::max<std::int64_t>(shortage->minor, 1));
  return {std::clamp(critical_ratio(missing, leftover), lowest, highest), leftover / missing};
}

}  // namespace sparewell::supply
