#include "supply/booked.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/month_demand.hpp"
#include "supply/what_if.hpp"

namespace booked_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

// Next order day in 7 days and 7 days to arrive: stock must last, and bookings count, so far.
const Date until = today + days{14};
// Exponential lives of 20 days: replacements in 14 days are Poisson with mean 0.7 a unit.
constexpr double scale = 20;
constexpr double in_interval = 14 / scale;

Reservation booking(const std::string& patient, int pieces, std::optional<Date> on,
                    const std::string& item = "L1") {
  return {{patient}, {item}, "main store", pieces, on};
}

struct Made {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;

  Made() {
    add_unit(clinic, lives, "P1", 10, 1.0, scale);
    add_unit(clinic, lives, "P2", 10, 1.0, scale);
  }
  [[nodiscard]] std::vector<ProposalLine> propose() const {
    return supply::propose(clinic, lives, today);
  }
};

std::vector<const Reservation*> list_of(const std::vector<Reservation>& bookings) {
  std::vector<const Reservation*> made;
  for (const auto& each : bookings) made.push_back(&each);
  return made;
}

}  // namespace

TEST_CASE("A booking is due by its day, at once without one, and still when the day has passed") {
  CHECK(is_due(booking("P1", 1, std::nullopt), today));
  CHECK(is_due(booking("P1", 1, today - days{30}), today));
  CHECK(is_due(booking("P1", 1, until), until));
  CHECK_FALSE(is_due(booking("P1", 1, until + days{1}), until));
}

TEST_CASE("With a booking the order covers one certain piece and the other patient's chances") {
  // Enumerated: one piece for P1 and n for P2 with P(n) = Poisson, mean 0.7.
  const auto covered = [](int pieces) {
    double sum = 0;
    for (int n = 0; 1 + n <= pieces; ++n) sum += poisson(n, in_interval);
    return sum;
  };
  int least = 0;
  while (covered(least) < 0.95) ++least;
  for (const int there : {0, 1, 2}) {
    Made given;
    if (there > 0) add_stock(given.clinic, there);
    given.clinic.reservations = {booking("P1", 1, until)};
    const auto lines = given.propose();
    REQUIRE(lines.size() == 1);
    CHECK(there + lines[0].quantity == least);
    CHECK(lines[0].reserved == 1);
    CHECK(lines[0].reason.booked == 1);
    CHECK(lines[0].reason.booked_until == until);
    CHECK(lines[0].chance_short == doctest::Approx(1 - covered(there)).epsilon(1e-4));
    REQUIRE(lines[0].reason.needs.size() == 1);
    CHECK(lines[0].reason.needs[0].patient.text == "P2");
  }
}

TEST_CASE("Position and demand do not count a booked piece twice") {
  Made given;
  const auto before = given.propose();
  given.clinic.reservations = {booking("P1", 1, today + days{3})};
  const auto after = given.propose();
  REQUIRE(before.size() == 1);
  REQUIRE(after.size() == 1);
  CHECK(before[0].reason.expected_demand == doctest::Approx(2 * in_interval).epsilon(1e-4));
  CHECK(after[0].reason.expected_demand == doctest::Approx(in_interval).epsilon(1e-4));
  CHECK(after[0].reserved == 1);
  const double with = demand(given.clinic, given.lives, {"L1"}, today, 14).mean();
  CHECK(with == doctest::Approx(1 + in_interval).epsilon(1e-4));
  // Until the day before the visit it is chance alone.
  const double by_chance = demand(given.clinic, given.lives, {"L1"}, today, 2).mean();
  CHECK(by_chance == doctest::Approx(2 * 2 / scale).epsilon(1e-3));
}

TEST_CASE("A later booking does not count yet, and leaves its patient to chance") {
  Made given;
  const auto before = given.propose();
  given.clinic.reservations = {booking("P1", 1, until + days{1})};
  const auto after = given.propose();
  REQUIRE(after.size() == 1);
  CHECK(after[0].quantity == before[0].quantity);
  CHECK(after[0].reserved == 0);
  CHECK(after[0].reason.booked_later == 1);
  CHECK(after[0].reason.needs.size() == 2);
  SUBCASE("waiting a week brings it into the interval") {
    auto policy = policy_of(given.clinic.settings);
    policy.order_on = today + days{7};
    const auto waited = propose(given.clinic, given.lives, today, policy).lines;
    REQUIRE(waited.size() == 1);
    CHECK(waited[0].reserved == 1);
    const auto outcome = what_if(given.clinic, given.lives, today, policy);
    CHECK(outcome.pieces == waited[0].quantity);
  }
}

TEST_CASE("An overdue visit counts, and so does an item that the patient does not use yet") {
  Made given;
  given.clinic.items.push_back(stocked_item("L2"));
  given.clinic.reservations = {booking("P1", 1, today - days{5}),
                               booking("P2", 1, today + days{5}, "L2")};
  const auto lines = given.propose();
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].reserved == 1);
  REQUIRE(lines[0].reason.needs.size() == 1);
  CHECK(lines[0].reason.needs[0].patient.text == "P2");  // still wears L1
  CHECK(lines[1].item.text == "L2");
  CHECK(lines[1].quantity == 1);
  CHECK(lines[1].reason.expected_demand == doctest::Approx(0));
}

TEST_CASE("Booked pieces speak for the most worn units of their patient, spares last") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_unit(clinic, lives, "P1", 10, 2.0, 300);
  add_unit(clinic, lives, "P1", 200, 2.0, 300);
  add_unit(clinic, lives, "P1", 250, 2.0, 300);
  lives[2].life = wear::UnitLife{today, 250, 2.0, 300, {{today, 0.0}}};  // in a drawer
  add_unit(clinic, lives, "P2", 280, 2.0, 300);
  const Lives users{&lives[0], &lives[1], &lives[2], &lives[3]};
  const auto left_after = [&](const std::vector<Reservation>& bookings) {
    return left_to_chance(clinic, users, list_of(bookings), until);
  };
  CHECK(left_after({}) == users);
  CHECK(left_after({booking("P1", 1, until)}) == Lives{&lives[0], &lives[2], &lives[3]});
  CHECK(left_after({booking("P1", 2, until)}) == Lives{&lives[2], &lives[3]});
  CHECK(left_after({booking("P1", 7, until)}) == Lives{&lives[3]});
  CHECK(left_after({booking("P9", 1, until)}) == users);
  // The soonest piece is for the most worn unit, whatever the order of the records.
  const std::vector<Reservation> two{booking("P1", 1, today + days{9}), booking("P1", 1, today)};
  const auto uses = booked_uses(clinic, users, list_of(two), until);
  REQUIRE(uses.size() == 2);
  CHECK(uses[0].unit == &lives[1]);
  CHECK(uses[0].on == today);
  CHECK(uses[1].unit == &lives[0]);
}

TEST_CASE("By month a booked piece is certain in its month and chance before it") {
  Made given;
  const auto months = months_ahead(today, 2);  // rest of November, December, January
  REQUIRE(months.size() == 3);
  given.clinic.reservations = {booking("P1", 1, make_date(2026, 12, 10))};
  const auto items = demand_by_month(given.clinic, given.lives, today, months);
  REQUIRE(items.size() == 1);
  const auto& needs = items[0].months;
  CHECK(needs[0].mean == doctest::Approx(2 * 5 / scale).epsilon(1e-3));
  CHECK(needs[1].mean == doctest::Approx(1 + 31 / scale).epsilon(1e-3));
  CHECK(needs[1].pieces.at_most(0) == doctest::Approx(0));
  CHECK(needs[2].mean == doctest::Approx(31 / scale).epsilon(1e-3));
}

}  // namespace booked_test
