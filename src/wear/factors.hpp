/// The usage factors z of the wear model and how a patient's records become numbers.
#pragma once

#include <array>
#include <string_view>

#include "clinic/patient.hpp"

namespace sparewell::wear {

/// Each factor is zero at reference use: level K2, no kneeling, 12 hours of wear a day, normal
/// sweating, no impact sport.
enum class Factor {
  activity,        ///< K level less 2
  kneeling_hours,  ///< hours a day
  wear_hours,      ///< hours a day less 12
  sweating_low,    ///< 1 when low
  sweating_high,   ///< 1 when high
  impact_sport     ///< 1 when yes
};
inline constexpr std::size_t factor_count = 6;
using FactorVector = std::array<double, factor_count>;

/// "activity", "kneeling_hours" ...: the names used in resources/ and in reports.
[[nodiscard]] std::string_view factor_name(Factor factor);

/// Puts what `usage` states over `before`; fields left empty keep their value. Hours outside a day
/// count as its nearest end, and a number that is not finite as not stated.
[[nodiscard]] FactorVector updated_factors(FactorVector before, const Usage& usage);

/// beta . z: the log of the wear per day relative to reference use.
[[nodiscard]] double log_wear_rate(const FactorVector& factors, const FactorVector& beta);

}  // namespace sparewell::wear
