#include "supply/month_demand.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/demand.hpp"

namespace month_demand_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

TEST_CASE("Months are what is left of this one, and whole ones after it") {
  const auto months = months_ahead(make_date(2026, 11, 25), 3);
  REQUIRE(months.size() == 4);
  CHECK(months[0] == Month{make_date(2026, 11, 26), make_date(2026, 11, 30)});
  CHECK(months[1] == Month{make_date(2026, 12, 1), make_date(2026, 12, 31)});
  CHECK(months[3] == Month{make_date(2027, 2, 1), make_date(2027, 2, 28)});
  const auto from_end = months_ahead(make_date(2028, 1, 31), 1);
  REQUIRE(from_end.size() == 1);
  CHECK(from_end[0] == Month{make_date(2028, 2, 1), make_date(2028, 2, 29)});
}

TEST_CASE("The means of the months add up to the demand until their end") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 6; ++i) add_unit(clinic, lives, fmt::format("P{}", i), 60.0 * i, 2.5, 400);
  const auto months = months_ahead(today, 8);
  const auto needs = demand_by_month(clinic, lives, today, months);
  REQUIRE(needs.size() == 1);
  CHECK(needs[0].item.text == "L1");
  double sum = 0;
  for (std::size_t i = 0; i < months.size(); ++i) {
    sum += needs[0].months[i].mean;
    CHECK(needs[0].months[i].pieces.mean() == doctest::Approx(needs[0].months[i].mean));
    const auto until = demand(clinic, lives, {"L1"}, today, days_between(today, months[i].to));
    CHECK(sum == doctest::Approx(until.mean()).epsilon(1e-6));
  }
}

TEST_CASE("It is told how far the work has come, and can be stopped") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_unit(clinic, lives, "P1", 60, 2.5, 400);
  std::vector<double> told;
  const auto goes_on = [&](double done) {
    told.push_back(done);
    return told.size() < 2;
  };
  CHECK(demand_by_month(clinic, lives, today, months_ahead(today, 2), goes_on).size() == 1);
  CHECK(told == std::vector<double>{1.0});
  CHECK(demand_by_month(clinic, lives, today, months_ahead(today, 2), goes_on).empty());
}

TEST_CASE("With constant need a month's pieces follow Poisson's law nearly") {
  // 200 users with exponential lives: replacements are a Poisson process of 0.1 a day.
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_poisson_demand(clinic, lives, 0.1, 200);
  const auto needs = demand_by_month(clinic, lives, today, months_ahead(today, 3));
  const auto& december = needs[0].months[1];
  CHECK(december.mean == doctest::Approx(3.1).epsilon(2e-3));
  for (int n = 0; n < 9; ++n) {
    const double mass = december.pieces.mass()[static_cast<std::size_t>(n)];
    CHECK(mass == doctest::Approx(poisson(n, 3.1)).epsilon(0.03));
  }
  // The 0.9 quantile of Poisson(3.1) is 5: P(N <= 5) = 0.906, P(N <= 4) = 0.798 (summed by hand).
  CHECK(december.pieces.least_covering(0.9) == 5);
}

TEST_CASE("A part that ends several times a month needs the whole part of its mean for certain") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_unit(clinic, lives, "P1", 1, 3.0, 12);
  const auto needs = demand_by_month(clinic, lives, today, months_ahead(today, 2));
  const auto& december = needs[0].months[1];
  CHECK(december.mean > 2);
  CHECK(december.pieces.at_most(static_cast<int>(december.mean) - 1) == doctest::Approx(0));
  CHECK(december.pieces.mean() == doctest::Approx(december.mean));
}

}  // namespace month_demand_test
