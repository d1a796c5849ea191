/// The words for how a limb changes and when it leaves a size.
#pragma once

#include <string>

#include "care/limb_trend.hpp"

namespace sparewell::desk {

/// "24 to 27 cm", "24 cm and more", "up to 27 cm".
[[nodiscard]] std::string range_words(const Item& item);

/// "24.1 cm on 12 October 2026 (between the heights measured)".
[[nodiscard]] std::string reading_words(const care::LimbReading& reading);

/// "3 measurements".
[[nodiscard]] std::string count_of_readings(const care::LimbTrend& trend);

/// How fast the limb changes, as a sentence: by the year, or under a preparatory prosthesis from
/// each week to one twice as late.
[[nodiscard]] std::string change_words(const care::LimbTrend& trend);

/// "23.8 cm (80 %: 23.1 to 24.5 cm)".
[[nodiscard]] std::string prediction_words(const care::LimbPrediction& prediction);

/// Why the size is not foreseen for what is needed about `day`.
[[nodiscard]] std::string leaving_words(const care::LimbTrend& trend, const Item& item, Date day);

}  // namespace sparewell::desk
