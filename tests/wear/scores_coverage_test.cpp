#include "wear/scores_coverage.hpp"

#include <cmath>
#include <random>
#include <vector>

#include <doctest/doctest.h>

namespace scores_coverage_test {

using namespace sparewell::wear;

namespace {

class Draws {
 public:
  explicit Draws(unsigned seed) : random_{seed} {}
  double operator()() { return static_cast<double>(random_()) / 4294967296.0; }

 private:
  std::mt19937 random_;
};

Placement seen(double chance, double lost_at, std::size_t person) {
  return {std::min(chance, lost_at), chance <= lost_at, person};
}

/// Where outcomes lie in forecasts whose spans are too narrow, given where they should.
double too_narrow(double v) {
  return v < 0.5 ? 2 * v * v : 1 - 2 * (1 - v) * (1 - v);
}

}  // namespace

TEST_CASE("Without censoring the share is a count with Wilson's interval") {
  // By hand: 2 of 4 within (0.25, 0.75]; binomial variance times 4/3 is worth 3 outcomes.
  const std::vector<Placement> four{{0.1, true, 0}, {0.3, true, 1}, {0.6, true, 2}, {0.9, true, 3}};
  const auto coverage = central_coverage(four, 0.5);
  REQUIRE(coverage);
  CHECK(coverage->share == doctest::Approx(0.5));
  CHECK(coverage->low == doctest::Approx(0.1253).epsilon(1e-3));
  CHECK(coverage->high == doctest::Approx(0.8747).epsilon(1e-3));
  CHECK(!central_coverage({}, 0.5));
}

TEST_CASE("A life not ended counts where later ones ended") {
  // By hand: after 0.2 the first is spread over 0.4 and 0.8.
  const std::vector<Placement> three{{0.2, false, 0}, {0.4, true, 1}, {0.8, true, 2}};
  CHECK(central_coverage(three, 0.5)->share == doctest::Approx(0.5));
}

TEST_CASE("Beyond the last outcome the share is as forecast and its interval open to both sides") {
  // By hand: 2/3 lie beyond 0.5, of which half is taken to lie up to 0.75.
  const std::vector<Placement> three{{0.1, true, 0}, {0.5, false, 1}, {0.5, false, 2}};
  const auto coverage = central_coverage(three, 0.5);
  CHECK(coverage->share == doctest::Approx(1.0 / 3));
  CHECK(coverage->low == doctest::Approx(0).epsilon(1e-9));
  CHECK(coverage->high > 2.0 / 3);
  const std::vector<Placement> nothing_known{{0, false, 0}, {0, false, 1}};
  const auto open = central_coverage(nothing_known, 0.8);
  CHECK(open->share == doctest::Approx(0.8));
  CHECK(open->low == doctest::Approx(0).epsilon(1e-9));
  CHECK(open->high == doctest::Approx(1));
}

TEST_CASE("Outcomes of one person are worth one, those of different persons more") {
  Draws draw{3};
  std::vector<Placement> once;
  std::vector<Placement> five_of_one;
  std::vector<Placement> five_of_five;
  for (std::size_t i = 0; i < 100; ++i) {
    const double u = draw();
    const double lost = draw() + 0.3;
    once.push_back(seen(u, lost, i));
    for (std::size_t copy = 0; copy < 5; ++copy) {
      five_of_one.push_back(seen(u, lost, i));
      five_of_five.push_back(seen(u, lost, 5 * i + copy));
    }
  }
  const auto narrow = central_coverage(five_of_five, 0.8);
  const auto same = central_coverage(five_of_one, 0.8);
  const auto plain = central_coverage(once, 0.8);
  CHECK(same->share == doctest::Approx(narrow->share));
  CHECK(same->high - same->low == doctest::Approx(plain->high - plain->low).epsilon(0.1));
  CHECK(narrow->high - narrow->low < 0.6 * (same->high - same->low));
}

TEST_CASE("Spans that are too narrow are found out although half of the lives have not ended") {
  // 0.25 and 0.75 are reached at v = sqrt(0.125) and 1 - sqrt(0.125).
  const double truth = 1 - 2 * std::sqrt(0.125);
  int held = 0;
  for (unsigned seed = 1; seed <= 20; ++seed) {
    Draws draw{seed};
    std::vector<Placement> placements;
    int ended = 0;
    for (std::size_t i = 0; i < 4000; ++i) {
      placements.push_back(seen(too_narrow(draw()), draw(), i));
      ended += placements.back().worn_out;
    }
    CHECK(ended < 2300);
    const auto coverage = central_coverage(placements, 0.5);
    held += coverage->low < truth && coverage->high > truth;
    CHECK(coverage->high < 0.35);
  }
  CHECK(held >= 16);
}

TEST_CASE("The interval holds the truth about 95 times in 100, with persons and censoring") {
  // Each of 80 persons has 6 outcomes that lean the same way and are uniform over all persons.
  int held = 0;
  const int clinics = 400;
  for (int clinic = 0; clinic < clinics; ++clinic) {
    Draws draw{static_cast<unsigned>(clinic + 1)};
    std::vector<Placement> placements;
    for (std::size_t person = 0; person < 80; ++person) {
      const double own = draw();
      for (int i = 0; i < 6; ++i) {
        const double u = draw() < 0.6 ? own : draw();
        placements.push_back(seen(u, 1.6 * draw(), person));
      }
    }
    const auto coverage = central_coverage(placements, 0.8);
    held += coverage->low <= 0.8 && coverage->high >= 0.8;
  }
  CHECK(held > 0.91 * clinics);
  CHECK(held < 0.985 * clinics);
}

}  // namespace scores_coverage_test
