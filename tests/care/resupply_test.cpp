#include "care/resupply.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>

namespace resupply_test {

using namespace sparewell;
using namespace sparewell::care;

namespace {

const Date today = make_date(2026, 11, 25);

struct Parts {
  std::vector<double> ages;  ///< of each unit in use
  double shape = 2;
  double scale = 100;
  double person_shape = 0;  ///< 0: everybody alike
};

std::vector<wear::LifeOfUnit> units_of(const Parts& parts) {
  std::vector<wear::LifeOfUnit> made;
  for (const double age : parts.ages) {
    const auto person = parts.person_shape > 0
                            ? wear::Multiplier{parts.person_shape, parts.person_shape}
                            : wear::Multiplier{};
    made.push_back({made.size(),
                    wear::UnitLife{today, age, parts.shape, parts.scale, {{today, 1.0}}, person}});
  }
  return made;
}

/// Share of trips from today on, on which there is always a working part, played day by day: each
/// failed part is on its way for so many days.
double played(const Parts& parts, int away, int resupply, int beside) {
  std::mt19937_64 random{1126};
  std::uniform_real_distribution<double> uniform{0, 1};
  constexpr int runs = 200000;
  int lasted = 0;
  for (int run = 0; run < runs; ++run) {
    double person = 1;
    if (parts.person_shape > 0) {
      person = std::gamma_distribution<double>{parts.person_shape, 1 / parts.person_shape}(random);
    }
    std::vector<int> failed(static_cast<std::size_t>(away) + 1, 0);
    for (const double age : parts.ages) {
      const auto life = [&](double from) {
        const double hazard =
            std::pow(from / parts.scale, parts.shape) - std::log1p(-uniform(random)) / person;
        return std::ceil(parts.scale * std::pow(hazard, 1 / parts.shape) - from);
      };
      for (double at = life(age); at <= away; at += life(0)) ++failed[static_cast<std::size_t>(at)];
    }
    int on_the_way = 0;
    bool always = true;
    for (int day = 1; day <= away; ++day) {
      on_the_way += failed[static_cast<std::size_t>(day)];
      if (day > resupply) on_the_way -= failed[static_cast<std::size_t>(day - resupply)];
      always = always && on_the_way <= beside;
    }
    lasted += always ? 1 : 0;
  }
  return static_cast<double>(lasted) / runs;
}

}  // namespace

TEST_CASE("With resupply at the place the chance told is never above trips played, and near it") {
  for (const Parts& parts : {Parts{{60}, 2.2, 90}, Parts{{0}, 1.2, 40}, Parts{{30, 10}, 2, 60},
                             Parts{{40}, 2, 60, 4}, Parts{{20, 50, 5}, 1.5, 80}}) {
    for (const int resupply : {3, 10}) {
      const int away = 45;
      const auto told =
          lasting_with_resupply({today, today + days{away}}, units_of(parts), resupply, 4);
      for (std::size_t beside = 0; beside < 4; ++beside) {
        const double share = played(parts, away, resupply, static_cast<int>(beside));
        CAPTURE(parts.scale);
        CAPTURE(resupply);
        CAPTURE(beside);
        CAPTURE(share);
        CAPTURE(told[beside]);
        // Four standard errors of 200,000 trips.
        const double error = 4 * std::sqrt(share * (1 - share) / 200000) + 2e-5;
        CHECK(told[beside] < share + error);
        // Where it matters, from nine in ten on, at most a quarter of the risk is added.
        if (share > 0.9) CHECK(1 - told[beside] < 1.25 * (1 - share) + error);
      }
    }
  }
}

TEST_CASE("The sooner parts can be had, and the more are carried, the surer; no trip needs none") {
  const auto units = units_of({{60}, 2, 80});
  const Trip trip{today, today + days{60}};
  const auto soon = lasting_with_resupply(trip, units, 2, 3);
  const auto late = lasting_with_resupply(trip, units, 20, 3);
  for (std::size_t n = 1; n < 4; ++n) {
    CHECK(soon[n] > late[n]);
    CHECK(soon[n] >= soon[n - 1]);
  }
  // Without a spare the first failure is one too many, however soon another can be had.
  CHECK(soon[0] == doctest::Approx(late[0]));
  CHECK(lasting_with_resupply({today, today}, units, 5, 2) == std::vector<double>(3, 1.0));
}

}  // namespace resupply_test
