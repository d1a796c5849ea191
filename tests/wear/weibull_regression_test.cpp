#include "wear/weibull_regression.hpp"

#include <cmath>

#include <doctest/doctest.h>

namespace weibull_regression_test {

using namespace sparewell;
using namespace sparewell::wear;
using doctest::Approx;

namespace {

LifeTable lives(std::initializer_list<double> times, std::vector<bool> events) {
  LifeTable table;
  table.time.resize(static_cast<Eigen::Index>(times.size()));
  std::copy(times.begin(), times.end(), table.time.begin());
  table.event = std::move(events);
  return table;
}

void add_covariate(LifeTable& table, std::string name, std::initializer_list<double> values) {
  const Eigen::Index column = table.covariates.cols();
  table.covariates.conservativeResize(table.time.size(), column + 1);
  std::copy(values.begin(), values.end(), table.covariates.col(column).begin());
  table.covariate_names.push_back(std::move(name));
}

std::string refusal_of(const LifeTable& table) {
  const auto fit = fit_weibull_life(table);
  return fit ? std::string{} : fit.error().sentence;
}

bool says(const std::string& sentence, const std::string& words) {
  return sentence.find(words) != std::string::npos;
}

LifeTable eight_lives() {
  return lives({50, 80, 110, 120, 150, 170, 210, 260},
               {true, true, false, true, true, true, false, true});
}

}  // namespace

TEST_CASE("The published example of a censored Weibull life comes out as printed") {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3 (data of 8.2.2.1): 10 failures among
  // 20 units, the others in use at 500 hours. Printed: scale 606.5280, shape 1.7208, log-likelihood
  // -75.135. The printed digits set the tolerances.
  LifeTable table = lives({54,  187, 216, 240, 244, 335, 361, 373, 375, 386,
                           500, 500, 500, 500, 500, 500, 500, 500, 500, 500},
                          std::vector<bool>(10, true));
  table.event.resize(20, false);
  const auto fit = fit_weibull_life(table);
  REQUIRE(fit.has_value());
  CHECK(std::abs(fit->scale - 606.5280) < 6e-4);
  CHECK(std::abs(fit->shape - 1.7208) < 5e-5);
  CHECK(std::abs(fit->log_likelihood + 75.135) < 5e-4);
  CHECK(std::abs(-2 * fit->log_likelihood + 4 - 154.27) < 5e-3);
  const double mean = fit->scale * std::tgamma(1 + 1 / fit->shape);
  CHECK(std::abs(mean - 540.737) < 1e-3);
  CHECK(fit->events == 10);
}

TEST_CASE("Units of time only scale the life, however large or small") {
  const LifeTable table = eight_lives();
  const auto plain = fit_weibull_life(table);
  REQUIRE(plain.has_value());
  for (const double unit : {1e-200, 1e-6, 1e6, 1e200}) {
    LifeTable scaled = table;
    scaled.time *= unit;
    const auto fit = fit_weibull_life(scaled);
    REQUIRE(fit.has_value());
    CHECK(fit->shape == Approx(plain->shape).epsilon(1e-9));
    CHECK(fit->scale / unit == Approx(plain->scale).epsilon(1e-9));
    CHECK(fit->log_likelihood == Approx(plain->log_likelihood - 6 * std::log(unit)));
  }
}

TEST_CASE("Units of a covariate only scale its coefficient") {
  LifeTable table = eight_lives();
  add_covariate(table, "z", {1, 3, 2, 2, 1, 3, 1, 0});
  const auto plain = fit_weibull_life(table);
  table.covariates = table.covariates.array() * 1e-7 + 0.25;
  const auto scaled = fit_weibull_life(table);
  REQUIRE(plain.has_value());
  REQUIRE(scaled.has_value());
  CHECK(scaled->coefficients[0] * 1e-7 == Approx(plain->coefficients[0]).epsilon(1e-6));
  CHECK(scaled->coefficient_errors[0] * 1e-7 == Approx(plain->coefficient_errors[0]).epsilon(1e-6));
  CHECK(scaled->log_likelihood == Approx(plain->log_likelihood));
}

TEST_CASE("One event among censored lives can be fitted when others outlast it") {
  const auto fit = fit_weibull_life(lives({10, 20, 30, 40}, {false, true, false, false}));
  REQUIRE(fit.has_value());
  // survreg(Surv(c(10, 20, 30, 40), c(0, 1, 0, 0)) ~ 1) of R's package survival 3.5.3.
  CHECK(fit->intercept == Approx(3.97920411606).epsilon(1e-9));
  CHECK(1 / fit->shape == Approx(0.477568875061).epsilon(1e-9));
  CHECK(fit->intercept_error == Approx(0.638514732194).epsilon(1e-6));
  CHECK(fit->log_scale_error == Approx(0.837762736066).epsilon(1e-6));
  CHECK(fit->log_likelihood == Approx(-5.31601524063).epsilon(1e-10));
}

TEST_CASE("What cannot be fitted is refused in a sentence") {
  CHECK(says(refusal_of(LifeTable{}), "no observations"));
  CHECK(says(refusal_of(lives({1, 2}, {false, false})), "no events"));
  CHECK(says(refusal_of(lives({1, 0, 2}, {true, true, true})), "observation 2 is 0"));
  CHECK(says(refusal_of(lives({1, -3, 2}, {true, true, true})), "observation 2 is -3"));
  CHECK(says(refusal_of(lives({1, NAN, 2}, {true, true, true})), "observation 2"));
  CHECK(says(refusal_of(lives({1, 2, 3}, {true, true})), "same number of rows"));
  CHECK(says(refusal_of(lives({5, 5, 5}, {true, true, true})), "no life lasted longer"));
  CHECK(says(refusal_of(lives({2, 5, 5}, {false, true, true})), "no life lasted longer"));
}

TEST_CASE("Covariates that say nothing, or nothing new, are named in the refusal") {
  LifeTable constant = eight_lives();
  add_covariate(constant, "level", {2, 2, 2, 2, 2, 2, 2, 2});
  CHECK(says(refusal_of(constant), "level is the same in every row"));

  LifeTable dependent = eight_lives();
  add_covariate(dependent, "a", {1, 3, 2, 2, 1, 3, 1, 0});
  add_covariate(dependent, "b", {0, 1, 0, 1, 1, 0, 0, 1});
  add_covariate(dependent, "c", {1, 4, 2, 3, 2, 3, 1, 1});
  CHECK(says(refusal_of(dependent), "follows from the other covariates"));

  LifeTable unknown = eight_lives();
  add_covariate(unknown, "u", {1, 3, 2, NAN, 1, 3, 1, 0});
  CHECK(says(refusal_of(unknown), "u has a value that is not a number"));
}

TEST_CASE("A covariate that separates events from the rest is refused") {
  LifeTable table = eight_lives();
  add_covariate(table, "spare", {0, 0, 1, 0, 0, 0, 1, 0});
  CHECK(says(refusal_of(table), "spare"));
}

TEST_CASE("Times from the smallest to the largest number in one table can be fitted") {
  LifeTable table = lives({1e-300, 2e-300, 3e-290, 1e-280, 1, 5, 1e300, 1e307},
                          {true, true, true, true, true, true, true, false});
  add_covariate(table, "z", {1, 3, 2, 2, 1, 3, 1, 0});
  const auto fit = fit_weibull_life(table);
  REQUIRE(fit.has_value());
  CHECK((fit->shape > 1e-4 && fit->shape < 0.1));
  CHECK(std::isfinite(fit->intercept));
  CHECK(std::isfinite(fit->log_likelihood));
  CHECK(std::isfinite(fit->coefficient_errors[0]));
}

TEST_CASE("Covariates as large or small as numbers go only scale their coefficients") {
  LifeTable table = eight_lives();
  add_covariate(table, "z", {1, 3, 2, 2, 1, 3, 1, 0});
  const auto plain = fit_weibull_life(table);
  REQUIRE(plain.has_value());
  for (const double unit : {1e-300, 1e-160, 1e160, 1e300}) {
    LifeTable scaled = table;
    scaled.covariates *= unit;
    const auto fit = fit_weibull_life(scaled);
    REQUIRE(fit.has_value());
    CHECK(fit->coefficients[0] * unit == Approx(plain->coefficients[0]).epsilon(1e-9));
    CHECK(fit->coefficient_errors[0] * unit == Approx(plain->coefficient_errors[0]).epsilon(1e-9));
    CHECK(fit->intercept_error == Approx(plain->intercept_error).epsilon(1e-9));
  }
}

TEST_CASE("A covariate that fixes every time leaves no spread to estimate") {
  LifeTable table = eight_lives();
  add_covariate(table, "z", {0, 1, 2, 3, 4, 5, 6, 7});
  table.time = (2 + 0.5 * table.covariates.col(0).array()).exp();
  CHECK(says(refusal_of(table), "without any spread"));

  LifeTable at_once = lives({1, 1, 1, 1000, 1000, 1000}, {true, true, true, false, false, false});
  add_covariate(at_once, "sport", {1, 1, 1, 0, 0, 0});
  CHECK(says(refusal_of(at_once), "without any spread"));
}

TEST_CASE("A covariate that orders the times, but not exactly, is fitted") {
  LifeTable table = eight_lives();
  add_covariate(table, "z", {0, 1, 2, 3, 4, 5, 6, 7});
  const auto fit = fit_weibull_life(table);
  REQUIRE(fit.has_value());
  CHECK(fit->coefficients[0] > 0);
  CHECK(fit->shape < 100);
}

TEST_CASE("A covariate of two levels with events in one of them is refused, at any size") {
  for (const int rows : {10, 200, 20000}) {
    LifeTable table;
    table.time.resize(rows);
    table.covariates.resize(rows, 1);
    table.covariate_names = {"sport"};
    for (int i = 0; i < rows; ++i) {
      const bool ended = i % 2 == 1;
      table.time[i] = ended ? 20 + i % 31 : 500 + i % 7;
      table.event.push_back(ended);
      table.covariates(i, 0) = ended ? 1 : 0;
      table.group.push_back(static_cast<std::size_t>(i) / 4);
    }
    CHECK(says(refusal_of(table), "covariate sport has no finite estimate"));
    table.group.clear();
    CHECK(says(refusal_of(table), "covariate sport has no finite estimate"));
  }
}

TEST_CASE("One event does not say how much groups differ") {
  LifeTable table;
  table.time = Eigen::VectorXd::LinSpaced(100, 10, 109);
  for (std::size_t i = 0; i < 100; ++i) {
    table.event.push_back(i == 33);
    table.group.push_back(i / 2);
  }
  CHECK(says(refusal_of(table), "fit the table without groups"));
}

TEST_CASE("Groups of very many like lives and very different ones can be fitted") {
  // Hazards beyond 1e160 for the shape that fits, which must neither overflow nor vanish.
  LifeTable table;
  table.time.resize(60);
  for (Eigen::Index i = 0; i < 60; ++i) {
    const double member = static_cast<double>(i % 5);
    table.time[i] = (i / 5) % 2 ? 0.5 + 0.01 * member : 36500 + member;
    table.event.push_back(true);
    table.group.push_back(static_cast<std::size_t>(i / 5));
  }
  const auto fit = fit_weibull_life(table);
  REQUIRE(fit.has_value());
  CHECK(fit->shape > 30);
  CHECK(fit->theta > 100);
  REQUIRE(fit->log_theta_error.has_value());
  CHECK(*fit->log_theta_error < 1);
}

TEST_CASE("More covariates than events are refused, not answered with noise") {
  LifeTable table = lives({3, 5, 9}, {true, true, true});
  add_covariate(table, "a", {1, 2, 0});
  add_covariate(table, "b", {0, 1, 0});
  CHECK_FALSE(refusal_of(table).empty());
}

}  // namespace weibull_regression_test
