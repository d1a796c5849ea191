/// Lives averaged over the laws that are possible.
#include <cmath>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/law_draws.hpp"
#include "wear/unit_life.hpp"

namespace averaged_life_test {

using namespace sparewell;
using namespace sparewell::wear;
using doctest::Approx;

namespace {

const Date today = make_date(2026, 1, 1);

class Random {
 public:
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_()) / 2147483647.0;
  }
  double around(double centre, double factor) {
    return centre * std::exp(between(-std::log(factor), std::log(factor)));
  }

 private:
  std::minstd_rand0 random_{31};
};

/// A unit and the laws that are possible for it, the best estimate in the middle.
struct Case {
  std::vector<RateSpan> future;
  UnitLife best;
  PossibleLives lives;
};

Case some_case(Random& random, double factor, std::size_t spans) {
  const double age = random.between(0, 1) < 0.2 ? 0 : random.between(1, 500);
  const double shape = random.between(0.8, 4);
  const double scale = random.between(100, 900);
  const double person = random.between(0.8, 20);
  std::vector<RateSpan> future;
  for (std::size_t i = 0; i < spans; ++i) {
    future.push_back({today + days{static_cast<int>(60 * i)}, random.between(0.3, 3)});
  }
  PossibleLives lives;
  const auto fill = [&](double centre) {
    LawArray values(law_draws);
    for (double& value : values) value = random.around(centre, factor);
    return values;
  };
  lives.wear_age = fill(age);
  lives.shape = fill(shape);
  lives.log_scale = fill(scale).log();
  lives.person_shape = fill(person);
  lives.person_rate = fill(person + 0.3);
  lives.rates.resize(law_draws, static_cast<Eigen::Index>(spans));
  for (std::size_t i = 0; i < spans; ++i) {
    lives.rates.col(static_cast<Eigen::Index>(i)) = fill(future[i].rate);
  }
  return {future, UnitLife{today, age, shape, scale, future, Multiplier{person, person + 0.3}},
          lives};
}

/// The average of what each law alone says, by the plain life of one law.
double direct(const Case& given, double after) {
  double sum = 0;
  for (Eigen::Index i = 0; i < law_draws; ++i) {
    std::vector<RateSpan> rates = given.future;
    for (std::size_t s = 0; s < rates.size(); ++s) {
      rates[s].rate = given.lives.rates(i, static_cast<Eigen::Index>(s));
    }
    const UnitLife one{today,
                       given.lives.wear_age[i],
                       given.lives.shape[i],
                       std::exp(given.lives.log_scale[i]),
                       rates,
                       Multiplier{given.lives.person_shape[i], given.lives.person_rate[i]}};
    sum += one.chance_after(after);
  }
  return sum / static_cast<double>(law_draws);
}

double largest_error(double factor, std::size_t spans) {
  Random random;
  double largest = 0;
  for (int i = 0; i < 300; ++i) {
    const Case given = some_case(random, factor, spans);
    const UnitLife life = given.best.averaged_over(given.lives);
    for (double after = 0.25; after < 5000; after *= 1.7) {
      largest = std::max(largest, std::abs(life.chance_after(after) - direct(given, after)));
    }
  }
  return largest;
}

}  // namespace

TEST_CASE("An averaged life gives the average of the chances under each law") {
  for (const auto& [factor, allowed] : {std::pair{1.0001, 1e-4}, {1.1, 1e-3}, {1.5, 1e-2}}) {
    CAPTURE(factor);
    const double steady = largest_error(factor, 1);
    const double changing = largest_error(factor, 3);
    MESSAGE(
        fmt::format("laws within a factor {}: chances off by {:.1e} at most, {:.1e} with "
                    "changes of use ahead",
                    factor, steady, changing));
    CHECK(steady < allowed);
    CHECK(changing < allowed);
  }
}

TEST_CASE("A part that was hardly worn, whatever its shape, has chances too") {
  // What has been worn multiplies by 1e60 on the way, and is 1e-60 now: beyond what a float holds.
  Random random;
  for (const double age : {1e-6, 0.01, 1.0}) {
    for (const double shape : {0.8, 4.0, 12.0}) {
      CAPTURE(age);
      CAPTURE(shape);
      Case given = some_case(random, 1.05, 1);
      given.lives.log_scale += std::log(300) - given.lives.log_scale.mean();
      given.lives.wear_age *= age / given.lives.wear_age.max(1.0);
      given.lives.wear_age = given.lives.wear_age.max(age / 2);
      for (double& each : given.lives.shape) each = random.around(shape, 1.05);
      const Multiplier person{given.lives.person_shape[0], given.lives.person_rate[0]};
      const UnitLife best{today, age, shape, 300, given.future, person};
      const UnitLife life = best.averaged_over(given.lives);
      for (double after = 1; after < 2000; after *= 2) {
        CHECK(life.chance_after(after) == Approx(direct(given, after)).epsilon(0.03).scale(1));
      }
    }
  }
}

TEST_CASE("Dates and chances of an averaged life agree") {
  Random random;
  for (int i = 0; i < 100; ++i) {
    const Case given = some_case(random, 1.3, 2);
    const UnitLife life = given.best.averaged_over(given.lives);
    for (const double p : standard_chances) {
      const auto day = life.worn_out_date(p);
      if (!day) continue;
      CHECK(life.chance_worn_by(*day) >= p);
      CHECK(life.chance_worn_by(*day - days{1}) < p);
    }
  }
}

TEST_CASE("The less is known of the law, the wider the dates are spread") {
  double before = 0;
  for (const double factor : {1.001, 1.5, 3.0}) {
    Random random;
    double width = 0;
    for (int i = 0; i < 50; ++i) {
      const Case given = some_case(random, factor, 1);
      const UnitLife life = given.best.averaged_over(given.lives);
      width += std::log(days_between(today, life.worn_out_date(0.9).value_or(today + days{36525})) /
                        std::max(1.0, double(days_between(today, *life.worn_out_date(0.1)))));
    }
    CHECK(width > before);
    before = width;
  }
}

TEST_CASE("A part in a drawer is not worn out under any law") {
  Random random;
  Case given = some_case(random, 1.2, 1);
  given.future[0].rate = 0;
  given.lives.rates = 0;
  const UnitLife best{today, 100, 2, 300, given.future};
  const UnitLife life = best.averaged_over(given.lives);
  CHECK(life.chance_after(10000) == 0);
  CHECK_FALSE(life.worn_out_date(0.05).has_value());
}

TEST_CASE("Draws are standard normal in their first moments, and always the same") {
  for (const Eigen::Index dimensions : {1, 9, 24, 60}) {
    const Eigen::MatrixXd draws = standard_draws(dimensions);
    REQUIRE(draws.rows() == dimensions);
    REQUIRE(draws.cols() == law_draws);
    CHECK(draws.rowwise().mean().cwiseAbs().maxCoeff() < 1e-14);
    const Eigen::Index exact = std::min<Eigen::Index>(dimensions, 24);
    const Eigen::MatrixXd covariance =
        draws.topRows(exact) * draws.topRows(exact).transpose() / static_cast<double>(law_draws);
    CHECK(covariance.isApprox(Eigen::MatrixXd::Identity(exact, exact), 1e-10));
    CHECK(draws == standard_draws(dimensions));
  }
}

}  // namespace averaged_life_test
