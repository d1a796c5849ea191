#include "desk/trend_words.hpp"

#include <cmath>

#include "clinic/say.hpp"
#include "desk/length_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// "shrinks by 2.1 %", "grows by 0.4 %", "stays".
std::string change_of(double change) {
  const double percent = std::abs(change) * 100;
  if (percent < 0.05) return said("hardly changes");
  return change < 0 ? say("shrinks by {:.1f} %", percent) : say("grows by {:.1f} %", percent);
}

std::string signed_percent(double change) {
  const double percent = std::round(change * 1000) / 10;
  // Adding 0 makes 0 of -0.
  return say("{:+.1f}", percent + 0.0);
}

}  // namespace

std::string range_words(const Item& item) {
  if (item.size_min_cm && item.size_max_cm) {
    return say("{} to {} {}", length_number(*item.size_min_cm), length_number(*item.size_max_cm),
               length_unit_words());
  }
  return item.size_min_cm ? say("{} and more", short_length_words(*item.size_min_cm))
                          : say("up to {}", short_length_words(item.size_max_cm.value_or(0)));
}

std::string reading_words(const care::LimbReading& reading) {
  const auto length = length_words(reading.circumference_cm);
  return reading.interpolated
             ? say("{} on {} (between the heights measured)", length, date_words(reading.day))
             : say("{} on {}", length, date_words(reading.day));
}

std::string count_of_readings(const care::LimbTrend& trend) {
  return count_words(static_cast<long long>(trend.readings().size()), "measurement",
                     "measurements");
}

std::string change_words(const care::LimbTrend& trend) {
  // Of a preparatory limb told for a doubling of the weeks: plainer than for e times as many.
  const double part = trend.preparatory() ? std::log(2) : 1;
  const auto scaled = [&](double change) { return std::expm1(part * std::log1p(change)); };
  const auto [low, high] = trend.change_between();
  const auto interval =
      say("(80 %: {} to {} %)", signed_percent(scaled(low)), signed_percent(scaled(high)));
  if (trend.preparatory()) {
    return say(
        "Under the preparatory prosthesis the limb {} {} each time the weeks since its delivery "
        "double: fast at first, then slower.",
        change_of(scaled(trend.change())), interval);
  }
  return say("The limb {} a year {}.", change_of(trend.change()), interval);
}

std::string prediction_words(const care::LimbPrediction& prediction) {
  return say("{} (80 %: {})", length_words(prediction.circumference_cm),
             length_range_words(prediction.low_cm, prediction.high_cm));
}

std::string leaving_words(const care::LimbTrend& trend, const Item& item, Date day) {
  return say(
      "By the trend of {} (the last {}) the limb will more likely than not be outside the size, "
      "{}, when what is ordered now is handed over: about {} on {}, with a chance of {} to be "
      "outside. This is a forecast; measure the limb before deciding.",
      count_of_readings(trend), reading_words(trend.readings().back()), range_words(item),
      prediction_words(trend.on(day)), date_words(day),
      chance_words(trend.chance_outside(item, day)));
}

}  // namespace sparewell::desk
