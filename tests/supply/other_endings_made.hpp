/// Rates of endings that are not wear, for the tests of this folder.
#pragma once

#include <initializer_list>
#include <utility>

#include "wear/other_endings.hpp"

namespace sparewell::supply::testing {

/// Endings behind a rate that is as good as known.
inline constexpr double known = 1e9;

/// Rates per day, each with so many endings behind it.
inline wear::OtherEndings rates(double endings,
                                std::initializer_list<std::pair<EndReason, double>> per_day) {
  wear::OtherEndings others;
  for (const auto& [reason, rate] : per_day) {
    others.rates[wear::position_of(reason)] = {endings, endings / rate};
  }
  return others;
}

}  // namespace sparewell::supply::testing
