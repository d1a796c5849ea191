#include "wear/factors.hpp"

#include <limits>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace factors_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

TEST_CASE("Reference use is zero in every factor") {
  Usage reference = usage("P", 0);
  reference.activity = Activity::k2;
  reference.kneeling_hours = 0;
  reference.wear_hours = 12;
  reference.sweating = Sweating::normal;
  reference.impact_sport = false;
  CHECK(updated_factors({5, 5, 5, 5, 5, 5}, reference) == FactorVector{});
}

TEST_CASE("What a record leaves empty keeps its value, and what it states replaces it") {
  Usage harder = usage("P", 0);
  harder.activity = Activity::k4;
  harder.sweating = Sweating::low;
  const FactorVector before{-1, 3, 2, 0, 1, 1};
  CHECK(updated_factors(before, harder) == FactorVector{2, 3, 2, 1, 0, 1});
  CHECK(updated_factors(before, usage("P", 0)) == before);
}

TEST_CASE("Hours outside a day count as its ends, and a number that is not finite as not stated") {
  Usage wrong = usage("P", 0);
  wrong.kneeling_hours = 1e9;
  wrong.wear_hours = -4;
  CHECK(updated_factors({}, wrong) == FactorVector{0, 24, -12, 0, 0, 0});
  wrong.kneeling_hours = std::numeric_limits<double>::quiet_NaN();
  wrong.wear_hours = std::numeric_limits<double>::infinity();
  CHECK(updated_factors({0, 2, 1, 0, 0, 0}, wrong) == FactorVector{0, 2, 1, 0, 0, 0});
}

TEST_CASE("Factors have the names used in files") {
  CHECK(factor_name(Factor::kneeling_hours) == "kneeling_hours");
  CHECK(factor_name(Factor::impact_sport) == "impact_sport");
}

}  // namespace factors_test
