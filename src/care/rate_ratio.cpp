#include "care/rate_ratio.hpp"

#include <boost/math/special_functions/beta.hpp>

namespace sparewell::care {

std::optional<RateRatio> rate_ratio(const OnsetCounts& counts, double coverage) {
  const int without = counts.onsets - counts.exposed_onsets;
  const int days_without = counts.days - counts.exposed_days;
  if (counts.onsets == 0 || counts.exposed_days == 0 || days_without == 0) return std::nullopt;
  const double of_odds = static_cast<double>(days_without) / counts.exposed_days;
  const double tail = (1 - coverage) / 2;
  const double exposed = counts.exposed_onsets;
  RateRatio made;
  if (without > 0) {
    made.estimate = exposed / without * of_odds;
    const double most = boost::math::ibeta_inv(exposed + 1, static_cast<double>(without), 1 - tail);
    made.high = most / (1 - most) * of_odds;
  }
  if (counts.exposed_onsets > 0) {
    const double least = boost::math::ibeta_inv(exposed, without + 1.0, tail);
    made.low = least / (1 - least) * of_odds;
  }
  return made;
}

}  // namespace sparewell::care
