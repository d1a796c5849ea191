#include "supply/successors.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/demand.hpp"
#include "supply/other_endings_made.hpp"

namespace successors_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;
using doctest::Approx;

namespace {

Item liner(const std::string& code, Material material, double size, const std::string& words) {
  Item item = stocked_item(code);
  item.attachment = Attachment::locking;
  item.material = material;
  item.thread = "M10";
  item.size_label = fmt::format("{}", size);
  item.size_min_cm = size;
  item.size_max_cm = size + 2;
  item.description = fmt::format("{}, size {}", words, size);
  return item;
}

/// Silicone and gel liners in sizes 24, 26, 28, and a thigh liner in 26 and 28.
Clinic clinic_with_sizes() {
  Clinic clinic;
  for (const double size : {24.0, 26.0, 28.0}) {
    clinic.items.push_back(
        liner(fmt::format("S{}", size), Material::silicone, size, "Silicone liner"));
    clinic.items.push_back(
        liner(fmt::format("G{}", size), Material::mineral_oil_gel, size, "Gel liner"));
  }
  for (const double size : {26.0, 28.0}) {
    clinic.items.push_back(
        liner(fmt::format("T{}", size), Material::silicone, size, "Thigh liner"));
  }
  return clinic;
}

void add_issue(Clinic& clinic, const std::string& patient, const std::string& item, int days_ago,
               std::optional<int> ended_days_ago = {}, EndReason reason = EndReason::resized) {
  Unit unit;
  unit.patient = {patient};
  unit.item = {item};
  unit.issued_on = today - days{days_ago};
  if (ended_days_ago) {
    unit.ended_on = today - days{*ended_days_ago};
    unit.end_reason = reason;
  }
  clinic.units.push_back(unit);
}

double chance(const std::vector<Successor>& list, const std::string& item) {
  for (const Successor& each : list) {
    if (each.item.text == item) return each.chance;
  }
  return 0;
}

}  // namespace

TEST_CASE("Without history a size is followed by its neighbours, mostly the smaller") {
  const Clinic clinic = clinic_with_sizes();
  const Successors successors{clinic, today};
  const auto of_middle = successors.of({"S26"}, EndReason::resized);
  REQUIRE(of_middle.size() == 2);
  CHECK(chance(of_middle, "S24") == Approx(0.75));
  CHECK(chance(of_middle, "S28") == Approx(0.25));
  // The smallest has no smaller neighbour: then no item is foreseen with a chance of 3 in 4.
  const auto of_smallest = successors.of({"S24"}, EndReason::resized);
  REQUIRE(of_smallest.size() == 1);
  CHECK(chance(of_smallest, "S26") == Approx(0.25));
}

TEST_CASE("A reaction leads to other materials of the size, an upgrade to any of the size") {
  Clinic clinic = clinic_with_sizes();
  clinic.items.push_back(liner("M26", Material::silicone, 26, "Small-threaded liner"));
  clinic.items.back().thread = "M8";
  const Successors successors{clinic, today};
  const auto reaction = successors.of({"S26"}, EndReason::reaction);
  REQUIRE(reaction.size() == 1);
  CHECK(chance(reaction, "G26") == Approx(1));
  const auto upgrade = successors.of({"S26"}, EndReason::upgrade);
  REQUIRE(upgrade.size() == 2);
  CHECK(chance(upgrade, "G26") == Approx(0.5));
  CHECK(chance(upgrade, "T26") == Approx(0.5));
}

TEST_CASE("Items that fit share by how often they were handed out") {
  Clinic clinic = clinic_with_sizes();
  for (int i = 0; i < 8; ++i) add_issue(clinic, fmt::format("P{}", i), "G26", 500);
  const Successors successors{clinic, today};
  CHECK(chance(successors.of({"S26"}, EndReason::upgrade), "G26") == Approx(0.9));
}

TEST_CASE("The clinic's own changes outweigh the rule as they come") {
  Clinic clinic = clinic_with_sizes();
  // Six changes to the larger size, the pair on one day each followed by one of its own.
  for (int i = 0; i < 3; ++i) {
    const std::string patient = fmt::format("P{}", i);
    add_issue(clinic, patient, "S26", 500, 200);
    add_issue(clinic, patient, "S26", 480, 200);
    add_issue(clinic, patient, "S28", 200);
    add_issue(clinic, patient, "S28", 190);
  }
  const auto learned = Successors{clinic, today}.of({"S26"}, EndReason::resized);
  CHECK(chance(learned, "S28") == Approx((6 + 3 * 0.25) / (6 + 3)));
  CHECK(chance(learned, "S24") == Approx(3 * 0.75 / (6 + 3)));
}

TEST_CASE("A change that nothing followed counts once its days have passed") {
  Clinic clinic = clinic_with_sizes();
  add_issue(clinic, "P1", "S26", 500, 10);  // may still be followed
  CHECK(chance(Successors{clinic, today}.of({"S26"}, EndReason::resized), "S24") == Approx(0.75));
  add_issue(clinic, "P2", "S26", 500, 61);
  add_issue(clinic, "P3", "S24", 61);  // another patient's
  CHECK(chance(Successors{clinic, today}.of({"S26"}, EndReason::resized), "S24") ==
        Approx(3 * 0.75 / 4));
}

TEST_CASE("Nothing is foreseen where nothing fits, for wear, or for an unknown item") {
  Clinic clinic = clinic_with_sizes();
  Item pump = stocked_item("PUMP");
  pump.kind = Kind::pump;
  clinic.items.push_back(pump);
  const Successors successors{clinic, today};
  CHECK(successors.of({"PUMP"}, EndReason::resized).empty());
  CHECK(successors.of({"PUMP"}, EndReason::upgrade).empty());
  CHECK(successors.of({"S26"}, EndReason::hole).empty());
  CHECK(successors.of({"S26"}, EndReason::lost).empty());
  CHECK(successors.of({"gone"}, EndReason::resized).empty());
}

TEST_CASE("Patients who outgrow one size are demand for its neighbours") {
  Clinic clinic = clinic_with_sizes();
  std::vector<wear::LifeOfUnit> lives;
  const double resized = 0.002;
  const double lost = 0.0005;
  const int users = 10;
  const int ahead = 50;
  for (int i = 0; i < users; ++i) {
    add_unit(clinic, lives, fmt::format("P{}", i), 0, 8, 1e6, "S26");  // as good as never worn out
    lives.back().others = rates(known, {{EndReason::resized, resized}, {EndReason::lost, lost}});
  }
  const double left = -std::expm1(-resized * ahead);
  const Pmf smaller = demand(clinic, lives, {"S24"}, today, ahead);
  CHECK(smaller.mean() == Approx(users * left * 0.75).epsilon(1e-4));
  CHECK(smaller.mass()[0] == Approx(std::pow(1 - left * 0.75, users)).epsilon(1e-4));
  CHECK(demand(clinic, lives, {"S28"}, today, ahead).mean() ==
        Approx(users * left * 0.25).epsilon(1e-4));
  CHECK(demand(clinic, lives, {"S26"}, today, ahead).mean() ==
        Approx(users * left * lost / resized).epsilon(1e-4));
  CHECK(demand(clinic, lives, {"G26"}, today, ahead).mean() == 0);
}

TEST_CASE(
    "A line tells how much of its demand is not for wear, and names needs by their own item") {
  Clinic clinic = clinic_with_sizes();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 40; ++i) {
    add_unit(clinic, lives, fmt::format("P{}", 100 + i), 0, 8, 1e6, "S26");
    lives.back().others = rates(known, {{EndReason::resized, 0.004}, {EndReason::lost, 0.001}});
  }
  clinic.items[0].lead_days = 20;  // S24
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 3);
  for (const ProposalLine& line : lines) {
    CHECK(line.reason.expected_not_for_wear == Approx(line.reason.expected_demand).epsilon(1e-3));
    const bool own = line.item.text == "S26";
    CHECK(line.reason.needs.empty() == !own);
    if (own) CHECK(line.reason.needs[0].chance > 0.005);
  }
}

}  // namespace successors_test
