/// Against R's p.adjust and binom.test: tests/reference/false_discovery.R wrote
/// tests/reference/false_discovery.json.
#include "wear/false_discovery.hpp"

#include <cmath>
#include <fstream>
#include <random>
#include <stdexcept>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

namespace false_discovery_test {

using namespace sparewell::wear;
using doctest::Approx;
using Json = nlohmann::json;

namespace {

Json reference() {
  std::ifstream in{std::string{SPAREWELL_SOURCE_DIR} + "/tests/reference/false_discovery.json"};
  return Json::parse(in);
}

/// The upper tail from the chance of every one of the 2^n outcomes.
double tail_by_enumeration(int count, const std::vector<double>& chances) {
  double tail = 0;
  for (unsigned outcome = 0; outcome < 1u << chances.size(); ++outcome) {
    double mass = 1;
    int successes = 0;
    for (std::size_t i = 0; i < chances.size(); ++i) {
      const bool success = (outcome >> i & 1u) != 0;
      mass *= success ? chances[i] : 1 - chances[i];
      successes += success ? 1 : 0;
    }
    if (successes >= count) tail += mass;
  }
  return tail;
}

}  // namespace

TEST_CASE("Adjusted p values agree with R's p.adjust") {
  const Json cases = reference()["benjamini_hochberg"];
  REQUIRE(cases.size() == 4);
  for (const Json& one : cases) {
    const auto adjusted = adjusted_for_false_discoveries(one["p"].get<std::vector<double>>());
    const auto expected = one["adjusted"].get<std::vector<double>>();
    REQUIRE(adjusted.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
      CHECK(adjusted[i] == Approx(expected[i]).epsilon(1e-13));
    }
  }
  CHECK(adjusted_for_false_discoveries({}).empty());
}

TEST_CASE("With equal chances the tail is the binomial one of R's binom.test") {
  const Json cases = reference()["binomial"];
  REQUIRE(cases.size() == 8);
  for (const Json& one : cases) {
    CAPTURE(one.dump());
    const std::vector<double> chances(one["trials"].get<std::size_t>(),
                                      one["chance"].get<double>());
    const double tail = chance_of_at_least(one["count"].get<int>(), chances);
    CHECK(std::abs(tail / one["tail"].get<double>() - 1) < 1e-10);
  }
}

TEST_CASE("With unequal chances the tail is the sum over all outcomes") {
  std::minstd_rand0 random{99};
  for (std::size_t trials = 0; trials <= 10; ++trials) {
    std::vector<double> chances(trials);
    for (double& p : chances) p = 0.3 * static_cast<double>(random()) / 2147483647.0;
    for (int count = 0; count <= static_cast<int>(trials) + 1; ++count) {
      CAPTURE(trials);
      CAPTURE(count);
      CHECK(chance_of_at_least(count, chances) ==
            Approx(tail_by_enumeration(count, chances)).epsilon(1e-12));
    }
  }
}

TEST_CASE("Certain and impossible trials are counted as such") {
  const std::vector<double> chances{1, 0, 1};
  CHECK(chance_of_at_least(2, chances) == 1);
  CHECK(chance_of_at_least(3, chances) == 0);
  CHECK(chance_of_at_least(-1, chances) == 1);
}

TEST_CASE("What is not a chance is refused") {
  CHECK_THROWS_AS((void)chance_of_at_least(1, std::vector{0.1, 1.1}), std::invalid_argument);
  CHECK_THROWS_AS((void)chance_of_at_least(1, std::vector{std::nan("")}), std::invalid_argument);
  CHECK_THROWS_AS((void)adjusted_for_false_discoveries(std::vector{-0.1}), std::invalid_argument);
}

}  // namespace false_discovery_test
