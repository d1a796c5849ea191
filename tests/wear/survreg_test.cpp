/// Against survreg(dist = "weibull") of R's package survival: tests/reference/survreg.R wrote
/// tests/reference/survreg.json and the data beside it.
#include <cmath>
#include <fstream>
#include <random>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "wear/table_file.hpp"
#include "wear/weibull_regression.hpp"

namespace survreg_test {

using namespace sparewell;
using namespace sparewell::wear;
using doctest::Approx;
using Json = nlohmann::json;

namespace {

LifeTable blank_table(std::size_t rows, std::vector<std::string> covariates) {
  LifeTable table;
  const auto n = static_cast<Eigen::Index>(rows);
  table.time.resize(n);
  table.event.resize(rows);
  table.covariates.resize(n, static_cast<Eigen::Index>(covariates.size()));
  table.covariate_names = std::move(covariates);
  return table;
}

LifeTable read_lives(const std::string& name) {
  const auto rows = testing::read_table("tests/reference/" + name + ".csv");
  const auto& header = rows.front();
  LifeTable table = blank_table(rows.size() - 1, {header.begin() + 2, header.end()});
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const auto row = static_cast<Eigen::Index>(i) - 1;
    table.time[row] = std::stod(rows[i][0]);
    table.event[i - 1] = rows[i][1] == "1";
    for (Eigen::Index j = 0; j < table.covariates.cols(); ++j) {
      table.covariates(row, j) = std::stod(rows[i][static_cast<std::size_t>(j) + 2]);
    }
  }
  return table;
}

/// The rows that simulated_data in survreg.R makes; minstd_rand0 is the same generator.
LifeTable simulated_lives(std::size_t rows) {
  LifeTable table = blank_table(rows, {"kneeling", "sport", "level"});
  std::minstd_rand0 random{20251};
  const auto next = [&] { return static_cast<double>(random()) / 2147483647.0; };
  for (std::size_t i = 0; i < rows; ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    const double kneeling = 4 * next();
    const double sport = next() < 0.3 ? 1 : 0;
    const double level = std::floor(5 * next()) - 2;
    const double life = 300 * std::exp(-0.15 * kneeling - 0.3 * sport - 0.1 * level) *
                        std::pow(-std::log(next()), 1 / 2.2);
    const double end = 800 * next();
    table.time[row] = std::min(life, end);
    table.event[i] = life <= end;
    table.covariates.row(row) << kneeling, sport, level;
  }
  return table;
}

void check_fit(const LifeFit& fit, const Json& expected) {
  const double precise = 1e-6;
  CHECK(fit.n == expected["n"].get<int>());
  CHECK(fit.events == expected["events"].get<int>());
  const auto agrees = [&](double ours, const Json& theirs) {
    CHECK(std::abs(ours - theirs.get<double>()) <= precise * std::abs(theirs.get<double>()));
  };
  agrees(fit.intercept, expected["intercept"]);
  agrees(fit.intercept_error, expected["intercept_error"]);
  agrees(fit.scale, std::exp(expected["intercept"].get<double>()));
  agrees(1 / fit.shape, expected["scale"]);
  agrees(fit.log_scale_error, expected["log_scale_error"]);
  agrees(fit.log_likelihood, expected["log_likelihood"]);
  REQUIRE(static_cast<std::size_t>(fit.coefficients.size()) == expected["coefficients"].size());
  for (std::size_t j = 0; j < expected["coefficients"].size(); ++j) {
    const auto at = static_cast<Eigen::Index>(j);
    agrees(fit.coefficients[at], expected["coefficients"][j]);
    agrees(fit.coefficient_errors[at], expected["coefficient_errors"][j]);
  }
}

}  // namespace

TEST_CASE("The plain fit agrees with R's survreg to six digits on published data") {
  std::ifstream in{std::string{SPAREWELL_SOURCE_DIR} + "/tests/reference/survreg.json"};
  const Json fits = Json::parse(in);
  REQUIRE(fits.size() == 6);
  for (const Json& expected : fits) {
    const auto name = expected["name"].get<std::string>();
    CAPTURE(name);
    const LifeTable table =
        name == "simulated" ? simulated_lives(expected["n"].get<std::size_t>()) : read_lives(name);
    const auto fit = fit_weibull_life(table);
    REQUIRE(fit.has_value());
    check_fit(*fit, expected);
  }
}

}  // namespace survreg_test
