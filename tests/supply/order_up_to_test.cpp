// Order-up-to levels against published worked examples.
#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/demand.hpp"

namespace order_up_to_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

/// Poisson demand as this program makes it: exponential lives over ten days.
Pmf poisson_demand(double mean) {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_poisson_demand(clinic, lives, mean / 10, 100);
  return demand(clinic, lives, {"L1"}, today, 10);
}

/// A normal distribution in whole pieces: all the mass within half a piece of n at n.
Pmf normal_in_pieces(double mean, double deviation, int most) {
  const auto below = [&](double x) {
    return 0.5 * std::erfc((mean - x) / deviation / std::sqrt(2.0));
  };
  std::vector<double> mass;
  for (int n = 0; n <= most; ++n) mass.push_back(below(n + 0.5) - (n == 0 ? 0 : below(n - 0.5)));
  mass.back() += 1 - below(most + 0.5);
  return Pmf{mass};
}

double pieces_short(const Pmf& demand, int stock) {
  double sum = 0;
  for (int n = stock; n < 400; ++n) sum += demand.more_than(n);
  return sum;
}

double expected_left(const Pmf& demand, int stock) {
  return stock - demand.mean() + pieces_short(demand, stock);
}

}  // namespace

TEST_CASE("The Poisson newsvendor level and its cost") {
  // "Fundamentals of Supply Chain Theory", 2nd ed. 2019, example 4.7: h = 1, p = 4, mean 6:
  // S = 8, cost 3.570106945770946; at S = 5 cost 6.590296024616344.
  const Pmf six = poisson_demand(6);
  CHECK(six.least_covering(4.0 / 5.0) == 8);
  CHECK(expected_left(six, 8) + 4 * pieces_short(six, 8) ==
        doctest::Approx(3.570106945770946).epsilon(1e-4));
  CHECK(expected_left(six, 5) + 4 * pieces_short(six, 5) ==
        doctest::Approx(6.590296024616344).epsilon(1e-4));
  // The tests of an inventory library written for that book: h = 0.18, p = 0.70, mean 50: S = 56,
  // cost 1.797235211809178.
  const Pmf fifty = poisson_demand(50);
  CHECK(fifty.least_covering(0.70 / 0.88) == 56);
  CHECK(0.18 * expected_left(fifty, 56) + 0.70 * pieces_short(fifty, 56) ==
        doctest::Approx(1.797235211809178).epsilon(1e-4));
}

TEST_CASE("The base-stock level over review period and lead time") {
  // The same book, example 4.4: N(50, 8) a period, review 1 + lead time 4, fractile 0.70 / 0.88:
  // S = 264.7668943741548, so 265 in whole pieces. A period has one piece of demand per step here.
  const Pmf period = normal_in_pieces(50, 8, 150);
  const Pmf five = convolve_all({period, period, period, period, period});
  CHECK(five.mean() == doctest::Approx(250).epsilon(1e-6));
  CHECK(five.least_covering(0.70 / 0.88) == 265);
}

TEST_CASE("Periodic review for 90 % over six weeks") {
  // Textbook example from memory: 18 a week, deviation 5, lead time 2 and review 4 weeks, 90 %:
  // 108 + 1.28 * 5 * sqrt(6) = 123.7, so 124.
  const Pmf week = normal_in_pieces(18, 5, 60);
  CHECK(convolve_all({week, week, week, week, week, week}).least_covering(0.90) == 124);
}

TEST_CASE("Fill rate and expected back-orders of base stock with Poisson demand") {
  // Computed from EBO(s) = m - sum over j < s of (1 - F(j)), by an independent script.
  struct Row {
    double mean;
    int stock;
    double backorders, fill;
  };
  for (const Row r : {Row{1, 2, 0.103638, 0.735759}, Row{1, 4, 0.004349, 0.981012},
                      Row{2, 4, 0.075141, 0.857123}, Row{2, 6, 0.005924, 0.983436},
                      Row{5, 6, 0.493298, 0.615961}, Row{5, 8, 0.122109, 0.866628}}) {
    const Pmf needed = poisson_demand(r.mean);
    CHECK(std::abs(pieces_short(needed, r.stock) - r.backorders) < 1e-4);
    CHECK(std::abs(needed.at_most(r.stock - 1) - r.fill) < 1e-4);
  }
}

}  // namespace order_up_to_test
