#include "supply/new_starts.hpp"

#include <cmath>
#include <numeric>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace new_starts_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

void add_new_patient(Clinic& clinic, const std::string& ref, Date on, int pieces,
                     const std::string& item = "L1") {
  Prosthesis prosthesis;
  prosthesis.patient = {ref};
  prosthesis.delivered_on = on;
  clinic.prostheses.push_back(prosthesis);
  for (int i = 0; i < pieces; ++i) {
    Unit unit;
    unit.patient = {ref};
    unit.item = {item};
    unit.issued_on = on;
    unit.copy = i + 1;
    clinic.units.push_back(unit);
  }
}

Clinic clinic_with_old_records() {
  Clinic clinic = clinic_with_item();
  clinic.items.push_back(stocked_item("L2"));
  add_new_patient(clinic, "OLD", today - days{1500}, 1);
  return clinic;
}

}  // namespace

TEST_CASE("Starts of one piece each follow the negative binomial law") {
  // R 4.2: dnbinom(0:5, size = 2.5, prob = 100/130).
  const Pmf made = NewStarts{2.5, 100, {1.0}}.in(30);
  const double wanted[] = {0.518969242194,  0.299405332035,  0.120913691783,
                           0.0418547394634, 0.0132808307913, 0.00398424923738};
  for (std::size_t n = 0; n < 6; ++n) CHECK(std::abs(made.mass()[n] - wanted[n]) < 1e-11);
}

TEST_CASE("Pieces of several for each start are summed exactly") {
  // R 4.2, by weighting the powers of the pieces' law with dnbinom, up to 60 starts.
  const NewStarts starts{2.5, 100, {0.2, 0.7, 0.1}};
  const Pmf made = starts.in(30);
  const double wanted[] = {0.518969242194,  0.0598810664069, 0.214420280096,  0.0641312048185,
                           0.0676213040893, 0.0300342326949, 0.0207078203794, 0.0106551897762};
  for (std::size_t n = 0; n < 8; ++n) CHECK(std::abs(made.mass()[n] - wanted[n]) < 1e-11);
  CHECK(std::abs(std::accumulate(made.mass().begin(), made.mass().end(), 0.0) - 1) < 1e-12);
  CHECK(made.mean() == doctest::Approx(starts.mean_in(30)).epsilon(1e-10));
}

TEST_CASE("Without starts, or without time, nothing is needed for new patients") {
  CHECK(NewStarts{}.in(30).mean() == 0);
  CHECK(NewStarts{2, 100, {1.0}}.in(0).mean() == 0);
}

TEST_CASE("Many starts keep their chances") {
  for (const double starts : {900.0, 5000.0}) {
    const NewStarts many{starts, 300, {0.5, 0.5}};
    const Pmf made = many.in(365);
    CHECK(made.mean() == doctest::Approx(many.mean_in(365)).epsilon(1e-9));
  }
}

TEST_CASE("Starts that take six pieces at a time leave gaps, and nothing out") {
  const NewStarts socks{3, 40, {0, 0, 0, 0, 0, 1}};
  const Pmf made = socks.in(30);
  CHECK(made.mass()[7] == 0);
  CHECK(std::abs(std::accumulate(made.mass().begin(), made.mass().end(), 0.0) - 1) < 1e-12);
  CHECK(made.mean() == doctest::Approx(socks.mean_in(30)).epsilon(1e-9));
}

TEST_CASE("The prior's shape is the most likely one") {
  // R 4.2: optimize() of sum(dnbinom(x, size, mu = mean(x), log = TRUE)) gives 0.529866.
  CHECK(best_prior_shape({0, 0, 1, 7, 3, 0, 2, 12}, 25.0 / 8) ==
        doctest::Approx(0.529866).epsilon(1e-3));
}

TEST_CASE("Only patients whose first prosthesis is recent are new") {
  Clinic clinic = clinic_with_old_records();
  for (int i = 0; i < 6; ++i) {
    add_new_patient(clinic, fmt::format("N{}", i), today - days{100 + 90 * i}, 2);
  }
  const NewStarts made = StartsOfClinic{clinic, today}.of(clinic.items[0]);
  const NewStarts other = StartsOfClinic{clinic, today}.of(clinic.items[1]);
  CHECK(made.pieces == std::vector<double>{0, 1});
  // Six starts in two years, shrunk towards three, the mean of both items.
  CHECK(made.mean_in(365) < 6.0);
  CHECK(made.mean_in(365) > 3.5);
  CHECK(other.mean_in(365) > 0);
  CHECK(other.mean_in(365) < 2.5);
}

TEST_CASE("A later part of a patient who is known is no start") {
  Clinic clinic = clinic_with_old_records();
  add_new_patient(clinic, "N1", today - days{400}, 1);
  Unit again = clinic.units.back();
  again.issued_on = today - days{100};
  clinic.units.push_back(again);
  Unit late = clinic.units.front();
  late.issued_on = today - days{50};
  clinic.units.push_back(late);
  const NewStarts made = StartsOfClinic{clinic, today}.of(clinic.items[0]);
  CHECK(made.pieces == std::vector<double>{1});
  CHECK(made.mean_in(730) < 1.01);
}

TEST_CASE("Items that are ordered for a patient are not stocked for new ones") {
  Clinic clinic = clinic_with_old_records();
  clinic.items[0].stocked = false;
  add_new_patient(clinic, "N1", today - days{400}, 1);
  CHECK(StartsOfClinic{clinic, today}.of(clinic.items[0]).starts == 0);
}

}  // namespace new_starts_test
