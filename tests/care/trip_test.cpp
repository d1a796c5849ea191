#include "care/trip.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>

namespace trip_test {

using namespace sparewell;
using namespace sparewell::care;
using doctest::Approx;

namespace {

const Date today = make_date(2026, 11, 25);

struct Part {
  double age = 0;
  double shape = 1;
  double scale = 1;
  double person_shape = 0;  ///< 0: everybody alike
  double away_rate = 1;     ///< how fast it wears away, at home 1
};

wear::LifeOfUnit unit_of(const Part& part, Date departure) {
  const wear::Multiplier person = part.person_shape > 0
                                      ? wear::Multiplier{part.person_shape, part.person_shape}
                                      : wear::Multiplier{};
  return {0, wear::UnitLife{today,
                            part.age,
                            part.shape,
                            part.scale,
                            {{today, 1.0}, {departure + days{1}, part.away_rate}},
                            person}};
}

/// P(N = 0), P(N = 1), ... on the trip by playing out lives that last until the departure.
std::vector<double> played(const Part& part, int before, int away) {
  std::mt19937_64 random{1125};
  std::uniform_real_distribution<double> uniform{0, 1};
  std::vector<double> counts(20, 0.0);
  double runs = 0;
  // Rates change the day after the departure.
  const double until_departure = before;
  const double all = before + 1 + (away - 1) * part.away_rate;
  for (int i = 0; i < 300000; ++i) {
    double person = 1;
    if (part.person_shape > 0) {
      std::gamma_distribution<double> gamma{part.person_shape, 1 / part.person_shape};
      person = gamma(random);
    }
    const auto life = [&](double from) {
      const double hazard =
          std::pow(from / part.scale, part.shape) - std::log1p(-uniform(random)) / person;
      return part.scale * std::pow(hazard, 1 / part.shape) - from;
    };
    double at = life(part.age);
    if (at <= until_departure) continue;
    ++runs;
    std::size_t count = 0;
    for (; at <= all; at += life(0)) ++count;
    ++counts[std::min<std::size_t>(count, counts.size() - 1)];
  }
  for (double& each : counts) each /= runs;
  return counts;
}

}  // namespace

TEST_CASE("Replacements on a trip are those of lives played out from the departure on") {
  // Within four standard errors of 300,000 lives, and the error that supply/renewal tells.
  supply::FreshCountsCache fresh;
  for (const Part& part : {Part{120, 2.2, 200}, Part{0, 1.4, 40}, Part{60, 2.5, 90, 4},
                           Part{30, 1.6, 60, 3, 2.5}, Part{200, 3.5, 250, 0, 0.5}}) {
    CAPTURE(part.age);
    CAPTURE(part.scale);
    const int before = 14;
    const int away = 28;
    const Trip trip{today + days{before}, today + days{before + away}};
    const auto counts = failures_on(trip, unit_of(part, trip.departure), fresh);
    const auto share = played(part, before, away);
    for (std::size_t n = 0; n < 5; ++n) {
      const double chance = n < counts.mass().size() ? counts.mass()[n] : 0;
      CHECK(std::abs(chance - share[n]) < 4 * std::sqrt(share[n] * (1 - share[n]) / 150000) + 2e-4);
    }
  }
}

TEST_CASE("A trip of no days, and a part that is not worn, need nothing") {
  supply::FreshCountsCache fresh;
  const auto unit = unit_of({100, 2, 200}, today + days{3});
  CHECK(failures_on({today + days{3}, today + days{3}}, unit, fresh).mean() == 0);
  const wear::LifeOfUnit idle{0, wear::UnitLife{today, 100, 2, 200, {{today, 0.0}}}};
  CHECK(failures_on({today, today + days{60}}, idle, fresh).mean() == 0);
}

TEST_CASE("Longer and harder trips need more") {
  supply::FreshCountsCache fresh;
  const auto mean = [&](int away, double rate) {
    const Trip trip{today + days{7}, today + days{7 + away}};
    return failures_on(trip, unit_of({100, 2, 150, 0, rate}, trip.departure), fresh).mean();
  };
  CHECK(mean(28, 1) > mean(14, 1));
  CHECK(mean(14, 2) > mean(14, 1));
}

}  // namespace trip_test
