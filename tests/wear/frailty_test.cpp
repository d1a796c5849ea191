/// Against the same marginal likelihood maximised with numeric gradients in R:
/// tests/reference/frailty.R wrote tests/reference/frailty.json and the data beside it.
#include <cmath>
#include <fstream>
#include <map>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "wear/table_file.hpp"
#include "wear/weibull_regression.hpp"

namespace frailty_test {

using namespace sparewell;
using namespace sparewell::wear;
using doctest::Approx;
using Json = nlohmann::json;

namespace {

/// Columns time, event, id of the group, covariates.
LifeTable read_grouped_lives(const std::string& name) {
  const auto rows = testing::read_table("tests/reference/" + name + ".csv");
  const auto& header = rows.front();
  LifeTable table;
  table.covariate_names = {header.begin() + 3, header.end()};
  const auto n = static_cast<Eigen::Index>(rows.size()) - 1;
  table.time.resize(n);
  table.covariates.resize(n, static_cast<Eigen::Index>(table.covariate_names.size()));
  std::map<std::string, std::size_t> groups;
  for (Eigen::Index i = 0; i < n; ++i) {
    const auto& row = rows[static_cast<std::size_t>(i) + 1];
    table.time[i] = std::stod(row[0]);
    table.event.push_back(row[1] == "1");
    table.group.push_back(groups.try_emplace(row[2], groups.size()).first->second);
    for (Eigen::Index j = 0; j < table.covariates.cols(); ++j) {
      table.covariates(i, j) = std::stod(row[static_cast<std::size_t>(j) + 3]);
    }
  }
  return table;
}

void check_fit(const LifeFit& fit, const Json& expected) {
  const auto agrees = [&](double ours, const char* name, double precise) {
    CAPTURE(name);
    CHECK(ours == Approx(expected[name].get<double>()).epsilon(precise));
  };
  CHECK(fit.n == expected["n"].get<int>());
  CHECK(fit.events == expected["events"].get<int>());
  CHECK(fit.groups == expected["groups"].get<int>());
  agrees(fit.log_likelihood, "log_likelihood", 1e-6);
  agrees(fit.shape, "shape", 1e-4);
  agrees(fit.theta, "theta", 1e-4);
  agrees(fit.intercept, "intercept", 1e-4);
  agrees(fit.intercept_error, "intercept_error", 1e-4);
  agrees(fit.log_scale_error, "log_shape_error", 1e-4);
  REQUIRE(fit.log_theta_error.has_value());
  agrees(*fit.log_theta_error, "log_theta_error", 1e-4);
  for (std::size_t j = 0; j < expected["coefficients"].size(); ++j) {
    const auto at = static_cast<Eigen::Index>(j);
    CHECK(fit.coefficients[at] == Approx(expected["coefficients"][j].get<double>()).epsilon(1e-4));
    CHECK(fit.coefficient_errors[at] ==
          Approx(expected["coefficient_errors"][j].get<double>()).epsilon(1e-4));
  }
}

}  // namespace

TEST_CASE("The fit with a shared multiplier agrees with an independent maximisation in R") {
  std::ifstream in{std::string{SPAREWELL_SOURCE_DIR} + "/tests/reference/frailty.json"};
  const Json fits = Json::parse(in);
  REQUIRE(fits.size() == 2);
  for (const Json& expected : fits) {
    const auto name = expected["name"].get<std::string>();
    CAPTURE(name);
    const auto fit = fit_weibull_life(read_grouped_lives(name));
    REQUIRE(fit.has_value());
    check_fit(*fit, expected);
  }
}

TEST_CASE("Groups that do not differ get a variance of 0 and the fit without multiplier") {
  // Each group holds the same lives, so the groups differ less than chance would have it.
  LifeTable table;
  table.time.resize(40);
  for (Eigen::Index i = 0; i < 40; ++i) {
    table.time[i] = 50 + 40 * static_cast<double>(i % 4);
    table.event.push_back(true);
    table.group.push_back(static_cast<std::size_t>(i / 4));
  }
  const auto shared = fit_weibull_life(table);
  table.group.clear();
  const auto plain = fit_weibull_life(table);
  REQUIRE(shared.has_value());
  REQUIRE(plain.has_value());
  CHECK(shared->theta == 0);
  CHECK_FALSE(shared->log_theta_error.has_value());
  CHECK(shared->groups == 10);
  CHECK(shared->log_likelihood == plain->log_likelihood);
  CHECK(shared->shape == plain->shape);
  CHECK(shared->intercept_error == plain->intercept_error);
  CHECK(plain->groups == 0);
}

TEST_CASE("Groups that do not match the rows are refused") {
  LifeTable table = read_grouped_lives("frailty_kidney");
  table.group.pop_back();
  CHECK_FALSE(fit_weibull_life(table).has_value());
  table.group.push_back(1000000000);
  CHECK_FALSE(fit_weibull_life(table).has_value());
}

}  // namespace frailty_test
