/// Against rlm of R's package MASS: tests/reference/robust-regression/rlm.R wrote rlm.json there.
#include "care/robust_line.hpp"

#include <array>
#include <cmath>
#include <fstream>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

namespace robust_line_test {

using namespace sparewell::care;
using doctest::Approx;
using Json = nlohmann::json;

namespace {

Json reference() {
  std::ifstream in{std::string{SPAREWELL_SOURCE_DIR} +
                   "/tests/reference/robust-regression/rlm.json"};
  return Json::parse(in);
}

}  // namespace

TEST_CASE("Without priors lines and errors are those of R's rlm and summary.rlm") {
  const Json cases = reference();
  REQUIRE(cases.size() == 7);
  for (const Json& one : cases) {
    CAPTURE(one["name"].get<std::string>());
    const auto x = one["x"].get<std::vector<double>>();
    const auto line = robust_line(x, one["y"].get<std::vector<double>>());
    REQUIRE(line);
    const auto agrees = [&](double ours, const char* key) {
      CAPTURE(key);
      CHECK(ours == Approx(one[key].get<double>()).epsilon(1e-9));
    };
    agrees(line->intercept, "intercept");
    agrees(line->slope, "slope");
    agrees(line->scale, "scale");
    agrees(line->sigma, "sigma");
    agrees(std::sqrt(line->intercept_variance), "intercept_error");
    agrees(std::sqrt(line->slope_variance), "slope_error");
    agrees(line->covariance, "covariance");
    CHECK(line->freedom == static_cast<double>(x.size() - 2));
    CHECK(line->freedom_at(x.front(), 0.5, 0.5) == Approx(line->freedom));
  }
}

TEST_CASE("A flat prior is no prior") {
  const Json one = reference()[2];
  const auto x = one["x"].get<std::vector<double>>();
  const auto y = one["y"].get<std::vector<double>>();
  const auto plain = robust_line(x, y);
  const auto flat = robust_line(x, y, {5, 1e9, 1, 1e-12});
  REQUIRE(flat);
  CHECK(flat->slope == Approx(plain->slope).epsilon(1e-9));
  CHECK(flat->sigma == Approx(plain->sigma).epsilon(1e-9));
  CHECK(flat->slope_variance == Approx(plain->slope_variance).epsilon(1e-9));
}

TEST_CASE("One point has the prior's slope and errors") {
  const std::array<double, 1> x{2};
  const std::array<double, 1> y{10};
  const auto line = robust_line(x, y, {-1, 0.5, 0.3, 4});
  REQUIRE(line);
  // Worked out by hand: the line goes through the point; 2 years on the slope's error of 0.5 has
  // grown to 1, beside the 0.3 of the point.
  CHECK(line->at(2) == Approx(10));
  CHECK(line->slope == Approx(-1));
  CHECK(line->variance_at(2) == Approx(0.09));
  CHECK(line->variance_at(4) == Approx(0.09 + 1));
  CHECK(line->freedom == Approx(4));
  // At the point all of 0.09 goes with sigma; 2 on, 0.09 of 1.09: 4 * (1.09 / 0.09)^2.
  CHECK(line->freedom_at(2) == Approx(4));
  CHECK(line->freedom_at(4) == Approx(4 * 1.09 * 1.09 / 0.09 / 0.09));
}

TEST_CASE("Two points that disagree with the prior move the slope part of the way") {
  const std::array<double, 2> x{0, 1};
  const std::array<double, 2> y{0, 1};
  const auto line = robust_line(x, y, {0, 1, 1, 1e9});
  REQUIRE(line);
  // By hand: the sum of squares of x is 1/2, its weight 1/2 against the prior's 1: a third of the
  // slope of 1, variance 1 / (1/2 + 1).
  CHECK(line->slope == Approx(1 / 3.0));
  CHECK(line->slope_variance == Approx(2 / 3.0));
}

TEST_CASE("One reading far off hardly moves the line") {
  std::vector<double> x;
  std::vector<double> y;
  for (int i = 0; i < 12; ++i) {
    x.push_back(i);
    y.push_back(30 - 0.5 * i + (i % 2 == 0 ? 0.1 : -0.1));
  }
  const auto clean = robust_line(x, y);
  y[9] += 20;
  const auto spoilt = robust_line(x, y);
  // Ordinary least squares would move the slope by 20 * 3.5 / 143 = 0.49 (by hand).
  CHECK(std::abs(spoilt->slope - clean->slope) < 0.03);
}

TEST_CASE("What the points do not tell is refused") {
  const std::array<double, 3> same{1, 1, 1};
  const std::array<double, 3> y{1, 2, 3};
  CHECK_FALSE(robust_line({}, {}));
  CHECK_FALSE(robust_line(same, y));
  CHECK_FALSE(robust_line(std::span{same}.first(2), std::span{y}.first(2)));
  CHECK(robust_line(same, y, {0, 1, 1, 1}));
}

}  // namespace robust_line_test
