#include "desk/forecast_test.hpp"

#include <algorithm>

namespace sparewell::desk {

const wear::BacktestScores* scores_of(const wear::Backtest& test, std::optional<Kind> kind) {
  if (!kind) return &test.all;
  const auto found = std::ranges::find(test.kinds, *kind, &wear::BacktestOfKind::kind);
  return found == test.kinds.end() ? nullptr : &found->scores;
}

bool same_history(const Clinic& one, const Clinic& other) {
  return one.units == other.units && one.usage == other.usage && one.items == other.items &&
         one.settings.records_begin == other.settings.records_begin;
}

}  // namespace sparewell::desk
