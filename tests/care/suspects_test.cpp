#include "care/suspects.hpp"

#include "care/clinic_made.hpp"

namespace suspects_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;
using doctest::Approx;

namespace {

const SubstanceTable no_table{};

Date ago(int day) {
  return today - days{day};
}

Reaction reaction(int days_ago, std::optional<Side> side = Side::left) {
  return {ana, side, ago(days_ago), std::nullopt, {"itching"}, ""};
}

Item liner(const std::string& code, std::vector<std::string> constituents) {
  auto item = made_item(code, Kind::liner);
  item.constituents = std::move(constituents);
  return item;
}

Unit worn(const std::string& item, int from, int to, EndReason reason = EndReason::tear) {
  Unit unit = made_unit(item, from);
  if (to > 0) {
    unit.ended_on = ago(to);
    unit.end_reason = reason;
  }
  return unit;
}

/// Oil and gel are worn for a third of the time, cotton always; nickel is nowhere.
Clinic story() {
  Clinic clinic = made_clinic(Suspension::pin);
  clinic.items.push_back(liner("GEL", {"oil", "gel"}));
  clinic.items.push_back(liner("PLAIN", {"silicone"}));
  auto sock = made_item("SOCK", Kind::sock);
  sock.constituents = {"cotton"};
  clinic.items.push_back(sock);
  clinic.units = {worn("SOCK", 901, 0), worn("GEL", 901, 604), worn("PLAIN", 604, 0)};
  return clinic;
}

Suspects suspects(const Clinic& clinic) {
  return suspects_of(clinic, ana, Side::left, no_table, today);
}

}  // namespace

TEST_CASE("What a reaction began with ranks above what was worn always, in counts and in chances") {
  Clinic clinic = story();
  for (const int day : {880, 800, 700, 650, 300}) clinic.reactions.push_back(reaction(day));
  const auto found = suspects(clinic);
  REQUIRE(found.onsets.size() == 5);
  const auto& first = found.substances.suspects.front();
  // Two substances of one part cannot be told apart.
  REQUIRE(first.alike.size() == 2);
  CHECK(first.alike[0].name == "gel");
  CHECK(first.alike[1].name == "oil");
  CHECK(first.counts.exposed_onsets == 4);
  CHECK(first.counts.onsets == 5);
  // The days after each onset do not count: 901 days in all less 5 times 14, 300 less 4 times 14.
  CHECK(first.counts.days == 901 - 5 * 14);
  CHECK(first.counts.exposed_days == 300 - 4 * 14);
  REQUIRE(first.ratio);
  CHECK(*first.ratio->estimate == Approx(4.0 / 244 / (1.0 / 587)));
  CHECK(found.items.suspects.front().alike.front().name == "GEL");
  double sum = found.substances.none;
  for (const auto& each : found.substances.suspects) {
    CHECK(each.chance <= first.chance);
    sum += each.chance;
    if (each.alike.front().name != "cotton") continue;
    // Always worn: nothing can be compared, and its chance is that of "none" by weight alone.
    CHECK_FALSE(each.ratio);
    CHECK(each.chance / found.substances.none == Approx((1.0 / 3 / 3) / (2.0 / 3)));
  }
  CHECK(sum == Approx(1));
}

TEST_CASE(
    "Reactions close together are one, and a part ended for a reaction is one unless recorded") {
  Clinic clinic = story();
  clinic.reactions = {reaction(800), reaction(790), reaction(777), reaction(700, std::nullopt),
                      reaction(600, Side::right)};
  clinic.units[1] = worn("GEL", 901, 690, EndReason::reaction);
  auto onsets = onsets_of(clinic, ana, Side::left, today);
  REQUIRE(onsets.size() == 2);
  CHECK(onsets[0].day == ago(800));
  CHECK(onsets[0].over == ago(777 - 15));
  CHECK(onsets[1].day == ago(700));
  CHECK(onsets[1].ended == std::vector<ItemCode>{{"GEL"}});
  clinic.units[1] = worn("GEL", 901, 680, EndReason::reaction);
  onsets = onsets_of(clinic, ana, Side::left, today);
  REQUIRE(onsets.size() == 3);
  CHECK(onsets[2].day == ago(680));
  CHECK_FALSE(onsets[2].recorded);
  // One that lasts long takes up what begins meanwhile.
  clinic.reactions[3].ended_on = ago(670);
  CHECK(onsets_of(clinic, ana, Side::left, today).size() == 2);
}

TEST_CASE(
    "A reaction on the day of a new part is not laid to it, one shortly after an old part is") {
  Clinic clinic = story();
  clinic.reactions = {reaction(604)};
  const auto& by_item = suspects(clinic).items.suspects;
  for (const auto& each : by_item) {
    CHECK(each.counts.exposed_onsets == (each.alike.front().name == "PLAIN" ? 0 : 1));
  }
  clinic.reactions = {reaction(604 - carry_over_days + 1)};
  CHECK(suspects(clinic).items.suspects.front().counts.exposed_onsets == 1);
}

TEST_CASE("Without a reaction, and before the first part, nothing is compared") {
  Clinic clinic = story();
  auto found = suspects(clinic);
  CHECK(found.onsets.empty());
  CHECK(found.substances.none == Approx(2.0 / 3));
  clinic.reactions = {reaction(2000)};
  found = suspects(clinic);
  CHECK(found.onsets.empty());
  CHECK(found.not_observed == 1);
  CHECK_FALSE(found.substances.suspects.front().ratio);
  CHECK(sides_worn(clinic, ana) == std::vector{Side::left});
}

}  // namespace suspects_test
