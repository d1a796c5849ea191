#include "supply/play/setting.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>

namespace sparewell::supply::play {
namespace {

constexpr std::array<double, 12> services{0.50, 0.65, 0.80, 0.85, 0.90,  0.925,
                                          0.95, 0.97, 0.98, 0.99, 0.995, 0.998};
/// From no stock at all to several times the mean use, close together where most clinics are.
constexpr std::array<double, 17> factors{0,   0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2,
                                         2.5, 3,    3.5, 4,    5, 6,    8,   12};
constexpr double same_service = 1e-9;
constexpr int working_days = 5;

}  // namespace

std::vector<double> service_targets(double present) {
  std::vector<double> targets{services.begin(), services.end()};
  std::erase_if(targets, [&](double each) { return std::abs(each - present) < same_service; });
  targets.push_back(present);
  std::ranges::sort(targets);
  return targets;
}

std::vector<Setting> settings_to_play(const std::vector<double>& targets) {
  std::vector<Setting> made;
  for (const double target : targets)
    made.push_back({Policy::sparewell, target, Rounding::nearest});
  for (const double target : targets) made.push_back({Policy::by_cost, target, Rounding::nearest});
  for (const Rounding rounding : {Rounding::down, Rounding::nearest, Rounding::up}) {
    for (const double factor : factors) made.push_back({Policy::min_max, factor, rounding});
  }
  made.push_back({Policy::when_empty, 0, Rounding::nearest});
  return made;
}

double by_cost_leftover(double target, double cost, double mean_cost, int days) {
  constexpr double week = 7;
  constexpr double nothing = 1e-9;
  return std::max(nothing, (1 - target) * cost / mean_cost * days / week);
}

Levels min_max_levels(const Item& item, const MeanUse& use, double factor, Rounding rounding) {
  if (!(use.per_day > 0) || !(factor > 0)) return up_to(0);
  const double covered = factor * use.per_day * (use.lead_days + use.review_days);
  const double whole = rounding == Rounding::up ? std::ceil(covered) : std::round(covered);
  const int least = static_cast<int>(whole) - (rounding == Rounding::down ? 1 : 0);
  if (least < 0) return up_to(0);
  const int between = static_cast<int>(std::ceil(use.per_day * use.review_days));
  return {least, least + std::max({between, item.pack_size, 1})};
}

Levels when_empty_levels(const MeanUse& use) {
  return use.per_day > 0 ? Levels{0, 1} : up_to(0);
}

Levels up_to(int target) {
  return {target - 1, target};
}

double review_days(const OrderDays& order_days) {
  if (order_days.every_days > 0) return order_days.every_days;
  const int chosen = std::popcount(order_days.weekdays);
  return 7.0 / (chosen == 0 ? working_days : chosen);
}

}  // namespace sparewell::supply::play
