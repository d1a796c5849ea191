#include "supply/place_demand.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/other_endings_made.hpp"

namespace place_demand_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;
using doctest::Approx;

namespace {

/// Wearers of two sizes at three places, who lose parts and change from one size to the other, and
/// patients who began there.
struct ThreePlaces {
  ThreePlaces() {
    clinic = clinic_with_item();
    for (const char* code : {"S24", "S26"}) {
      Item item = stocked_item(code);
      item.description = std::string{"Liner, size "} + (code + 1);
      item.size_label = code + 1;
      item.size_min_cm = std::stod(code + 1);
      item.size_max_cm = *item.size_min_cm + 2;
      clinic.items.push_back(item);
    }
    const char* places[] = {"", "North", "South"};
    for (int i = 0; i < 30; ++i) {
      const auto ref = fmt::format("P{}", 100 + i);
      Patient patient;
      patient.ref = {ref};
      patient.place = places[i % 7 < 4 ? 0 : i % 7 < 6 ? 1 : 2];
      clinic.patients.push_back(patient);
      add_unit(clinic, lives, ref, 40.0 + 9 * i, 2.5, 300, i % 3 == 0 ? "S24" : "S26");
      lives.back().others = rates(known, {{EndReason::resized, 0.001}, {EndReason::lost, 0.0005}});
      if (i % 4 != 0) continue;
      Prosthesis first;
      first.patient = {ref};
      first.delivered_on = today - days{40 + 9 * i};
      clinic.prostheses.push_back(first);
    }
  }
  [[nodiscard]] const Item& item(const std::string& code) const {
    return *ClinicIndex{clinic}.item({code});
  }
  Clinic clinic;
  std::vector<wear::LifeOfUnit> lives;
};

double distance(const Pmf& a, const Pmf& b) {
  double most = 0;
  for (int n = 0; n < 40; ++n) most = std::max(most, std::abs(a.at_most(n) - b.at_most(n)));
  return most;
}

}  // namespace

TEST_CASE("What the places need adds up to what the clinic needs, as whole distributions") {
  const ThreePlaces made;
  const PlaceDemand by_place{made.clinic, made.lives, today};
  REQUIRE(by_place.branches().names() == std::vector<std::string>{"main store", "North", "South"});
  for (const char* code : {"S24", "S26", "L1"}) {
    CAPTURE(code);
    const Item& item = made.item(code);
    const ClinicDemand whole{made.clinic, made.lives, today};
    const Pmf all = whole.of(item).until(today + days{60});
    std::vector<Pmf> parts;
    double mean = 0;
    for (std::size_t p = 0; p < 3; ++p) {
      parts.push_back(by_place.of(item, p).until(today + days{60}));
      mean += parts.back().mean();
    }
    CHECK(mean == Approx(all.mean()).epsilon(1e-9));
    // Units, changes and, with shares as they are modelled, starts are independent between places.
    CHECK(distance(convolve_all(parts), all) < 1e-9);
  }
}

TEST_CASE("A place has the demand of its own users, and their share of those who begin") {
  const ThreePlaces made;
  const PlaceDemand by_place{made.clinic, made.lives, today};
  const auto shares = shares_of_starts(made.clinic, by_place.branches(), made.lives, today);
  // By hand: of sides 0, 4, ..., 28 five belong to the main store, two to North and one to South;
  // of the thirty wearers 18, 8 and 4.
  CHECK(shares[0] == Approx((5 + 3 * 18.0 / 30) / (8 + 3)));
  CHECK(shares[1] == Approx((2 + 3 * 8.0 / 30) / (8 + 3)));
  CHECK(shares[2] == Approx((1 + 3 * 4.0 / 30) / (8 + 3)));
  CHECK(by_place.users({"S24"}, 0).size() + by_place.users({"S24"}, 1).size() +
            by_place.users({"S24"}, 2).size() ==
        10);
  for (const auto* life : by_place.users({"S26"}, 1)) {
    CHECK(by_place.branches().of(made.clinic.units[life->unit].patient) == 1);
  }
  const LeadTime week{7, false, {}};
  const double whole = ClinicDemand{made.clinic, made.lives, today}
                           .of(made.item("S24"))
                           .for_new_patients(today, week);
  CHECK(whole > 0);
  CHECK(by_place.of(made.item("S24"), 1).for_new_patients(today, week) ==
        Approx(whole * shares[1]));
}

TEST_CASE("With one place nothing changes") {
  ThreePlaces made;
  for (Patient& patient : made.clinic.patients) patient.place.clear();
  const PlaceDemand by_place{made.clinic, made.lives, today};
  CHECK_FALSE(by_place.branches().several());
  CHECK(by_place.of(made.item("S26"), 0).until(today + days{45}).mass() ==
        demand(made.clinic, made.lives, {"S26"}, today, 45).mass());
  auto lines = propose(made.clinic, made.lives, today);
  REQUIRE_FALSE(lines.empty());
  tell_places(lines, made.clinic, by_place);
  for (const auto& line : lines) CHECK(line.reason.by_place.empty());
}

TEST_CASE("A line tells how much of its demand is where, and the order of the records is nothing") {
  ThreePlaces made;
  auto lines = propose(made.clinic, made.lives, today);
  tell_places(lines, made.clinic, PlaceDemand{made.clinic, made.lives, today});
  REQUIRE_FALSE(lines.empty());
  for (const auto& line : lines) {
    REQUIRE(line.reason.by_place.size() == 3);
    double sum = 0;
    for (const auto& need : line.reason.by_place) sum += need.expected;
    CHECK(sum == Approx(line.reason.expected_demand).epsilon(1e-9));
  }
  std::ranges::reverse(made.clinic.patients);
  auto again = propose(made.clinic, made.lives, today);
  tell_places(again, made.clinic, PlaceDemand{made.clinic, made.lives, today});
  CHECK(again[0].reason.by_place[1].expected == lines[0].reason.by_place[1].expected);
}

}  // namespace place_demand_test
