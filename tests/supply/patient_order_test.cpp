#include "supply/patient_order.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace patient_order_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

Clinic clinic_with_patient_item() {
  Clinic clinic = clinic_with_item();
  clinic.items[0].stocked = false;
  return clinic;
}

/// A unit of which 10 % are worn out in `in_days`: exponential, so that today's age is no matter.
void add_wearing(Clinic& clinic, std::vector<wear::LifeOfUnit>& lives, const std::string& patient,
                 int in_days) {
  add_unit(clinic, lives, patient, 10, 1.0, (in_days - 0.5) / -std::log(0.9));
}

}  // namespace

TEST_CASE("A patient's part is ordered when waiting for the next order day would be too late") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_wearing(clinic, lives, "P1", 12);  // order by today + 5: before next Wednesday
  add_wearing(clinic, lives, "P2", 14);  // order by next Wednesday: not yet
  add_wearing(clinic, lives, "P3", 4);   // should have been ordered three days ago
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  const ProposalLine& line = lines[0];
  CHECK(line.reason.patient_ordered);
  CHECK(line.quantity == 2);
  CHECK(line.target == 2);
  CHECK(line.order_by == today);
  REQUIRE(line.reason.needs.size() == 2);
  CHECK(line.reason.needs[0].patient.text == "P3");
  CHECK(line.reason.needs[0].order_by == today - days{3});
  CHECK(line.reason.needs[1].order_by == today + days{5});
  CHECK(line.reason.needs[1].early == today + days{12});
  // Either is worn out within 14 days.
  const double neither = (1 - line.reason.needs[0].chance) * (1 - line.reason.needs[1].chance);
  CHECK(line.chance_short == doctest::Approx(1 - neither));
}

TEST_CASE("Stock and then orders cover the most urgent units first") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_wearing(clinic, lives, "P1", 12);
  add_wearing(clinic, lives, "P2", 8);
  add_wearing(clinic, lives, "P3", 4);
  add_stock(clinic, 1);
  clinic.order_lines = {placed(1, today - days{1})};
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 1);
  CHECK(lines[0].target == 3);
  CHECK(lines[0].reason.needs[0].patient.text == "P1");
  CHECK(lines[0].order_by == today + days{5});
  add_stock(clinic, 1);
  CHECK(propose(clinic, lives, today).empty());
}

TEST_CASE("A promised piece covers its patient's unit and nobody else's") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_wearing(clinic, lives, "P1", 12);
  add_wearing(clinic, lives, "P3", 4);
  add_stock(clinic, 1);
  clinic.reservations = {{{"P1"}, {"L1"}, "main store", 1, std::nullopt}};
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 1);
  CHECK(lines[0].reason.needs[0].patient.text == "P3");
  CHECK(lines[0].reason.reserved_for.empty());
}

TEST_CASE("A promised piece that is not there is ordered for its patient") {
  Clinic clinic = clinic_with_patient_item();
  clinic.reservations = {{{"P7"}, {"L1"}, "main store", 1, std::nullopt}};
  const auto lines = propose(clinic, {}, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 1);
  REQUIRE(lines[0].reason.reserved_for.size() == 1);
  CHECK(lines[0].reason.reserved_for[0].text == "P7");
}

TEST_CASE("A booked piece is ordered when it would not be there on its day otherwise") {
  Clinic clinic = clinic_with_patient_item();
  // The next order day is in 7 days, and what is ordered then takes 7 more.
  clinic.reservations = {{{"P7"}, {"L1"}, "main store", 1, today + days{15}}};
  CHECK(propose(clinic, {}, today).empty());
  clinic.reservations[0].needed_on = today + days{14};
  const auto lines = propose(clinic, {}, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 1);
  CHECK(lines[0].reserved == 1);
  CHECK(lines[0].reason.booked == 1);
  CHECK(lines[0].reason.booked_until == today + days{14});
  CHECK(lines[0].reason.reserved_for.size() == 1);
}

TEST_CASE("A unit that a booked piece replaces is not ordered for a second time") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_wearing(clinic, lives, "P1", 4);
  add_wearing(clinic, lives, "P1", 5);
  clinic.reservations = {{{"P1"}, {"L1"}, "main store", 1, today + days{10}}};
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 2);
  CHECK(lines[0].reason.reserved_for.size() == 1);
  REQUIRE(lines[0].reason.needs.size() == 1);  // the booking is for the most worn of the two
  CHECK(lines[0].reason.needs[0].early == today + days{5});
}

TEST_CASE("A piece that lies there for a later visit is for its patient alone") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_wearing(clinic, lives, "P1", 12);
  add_wearing(clinic, lives, "P3", 4);
  add_stock(clinic, 1);
  clinic.reservations = {{{"P1"}, {"L1"}, "main store", 1, today + days{60}}};
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 1);
  CHECK(lines[0].reserved == 0);
  CHECK(lines[0].reason.booked_later == 1);
  REQUIRE(lines[0].reason.needs.size() == 1);
  CHECK(lines[0].reason.needs[0].patient.text == "P3");
}

TEST_CASE("Late deliveries move the order-by date forward") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_wearing(clinic, lives, "P2", 20);
  CHECK(propose(clinic, lives, today).empty());
  // Two of seven were ten days late: the 0.9 quantile is 17 days.
  for (int i = 0; i < 2; ++i) clinic.order_lines.push_back(received_after(17, i));
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].order_by == today + days{3});
}

TEST_CASE("A spare that lies in a drawer is not ordered for") {
  Clinic clinic = clinic_with_patient_item();
  std::vector<wear::LifeOfUnit> lives;
  add_unit(clinic, lives, "P1", 10, 2, 300);
  lives[0].life = wear::UnitLife{today, 10, 2, 300, {{today, 0.0}}};
  CHECK(propose(clinic, lives, today).empty());
}

}  // namespace patient_order_test
