#include "desk/travel_team.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "desk/travel_form.hpp"
#include "desk/travel_lend.hpp"
#include "desk/travel_words.hpp"
#include "store/open.hpp"

namespace travel_team_test {

using namespace sparewell;
using namespace sparewell::desk;
using doctest::Approx;

namespace {

const Date today = make_date(2026, 11, 25);

Item item(const std::string& code, Kind kind, Attachment attachment = Attachment::none) {
  Item made;
  made.code = {code};
  made.kind = kind;
  made.attachment = attachment;
  made.unit_cost = Money{kind == Kind::liner ? 40000 : 15000, {"EUR"}};
  return made;
}

/// Two who wear the same liner and lock with a lanyard, and a third with a liner of their own.
Clinic camp() {
  Clinic clinic;
  clinic.settings.currency = {"EUR"};
  clinic.items = {item("L1", Kind::liner, Attachment::locking),
                  item("L2", Kind::liner, Attachment::locking), item("LK", Kind::lock)};
  for (const std::string ref : {"P-1", "P-2", "P-3"}) {
    clinic.patients.push_back(Patient{{ref}, "", "", std::nullopt, std::nullopt});
    Prosthesis prosthesis;
    prosthesis.patient = {ref};
    prosthesis.suspension = Suspension::lanyard;
    prosthesis.delivered_on = make_date(2025, 1, 1);
    clinic.prostheses.push_back(prosthesis);
    for (const std::string code : {ref == "P-3" ? "L2" : "L1", "LK"}) {
      Unit unit;
      unit.patient = {ref};
      unit.item = {code};
      unit.issued_on = make_date(2026, 3, 1);
      clinic.units.push_back(unit);
    }
  }
  clinic.shelf = {{{{"L1"}, "A", {}}, "main store", 3}, {{{"LK"}, "B", {}}, "main store", 3}};
  return clinic;
}

TravelRequest request(int away) {
  TravelRequest made;
  made.patient = "P-1";
  made.departure = today + days{7};
  made.back = made.departure + days{away};
  made.wanted = 0.99;
  return made;
}

/// P(nobody is left without) by going through the failures of both, with `own` and `common` spares.
double by_enumeration(const care::SpareNeed& a, const care::SpareNeed& b, int common) {
  double sum = 0;
  const auto& of_a = a.failures.mass();
  const auto& of_b = b.failures.mass();
  for (std::size_t i = 0; i < of_a.size(); ++i) {
    for (std::size_t j = 0; j < of_b.size(); ++j) {
      const int beyond_a = std::max(0, static_cast<int>(i) - a.carried);
      const int beyond_b = std::max(0, static_cast<int>(j) - b.carried);
      if (beyond_a + beyond_b <= common) sum += of_a[i] * of_b[j];
    }
  }
  return sum;
}

}  // namespace

TEST_CASE("Failures of those who share add up, as by going through all of them") {
  for (const int carried : {0, 1}) {
    care::SpareNeed a{supply::Pmf{{0.6, 0.3, 0.1}}, carried};
    care::SpareNeed b{supply::Pmf{{0.5, 0.3, 0.15, 0.05}}, 0};
    const auto common = supply::convolve(beyond_carried(a), beyond_carried(b));
    for (int spares = 0; spares < 4; ++spares) {
      CHECK(common.at_most(spares) == Approx(by_enumeration(a, b, spares)));
    }
  }
}

TEST_CASE(
    "A team's kit is the cheapest of all kits, and sharing needs no more than each for itself") {
  const auto assessment = forecast(camp(), built_in_priors(), today);
  const auto team = check_team(assessment, request(120), {"P-1", "P-2", "P-3"});
  REQUIRE(team);
  REQUIRE(team->shared.size() == 2);  // the liner of two, the lock of all three
  CHECK(team->shared[0].users.size() == 2);
  CHECK(team->shared[1].users.size() == 3);
  CHECK(team->reached);
  CHECK(team->with_spares >= 0.99);
  // All kits of the three needs: two that are shared and the third one's liner.
  const auto& own = team->members[2].parts[0];
  REQUIRE(own.item.text == "L2");
  const std::vector<care::SpareNeed> needs{own.need, team->shared[0].part.need,
                                           team->shared[1].part.need};
  const auto cost = [&](const std::vector<int>& spares) {
    double sum = 0;
    for (std::size_t i = 0; i < 3; ++i) sum += needs[i].cost * spares[i];
    return sum;
  };
  double least = HUGE_VAL;
  for (int a = 0; a <= 8; ++a) {
    for (int b = 0; b <= 8; ++b) {
      for (int c = 0; c <= 8; ++c) {
        const std::vector<int> spares{a, b, c};
        if (care::assurance(needs, spares) >= 0.99) least = std::min(least, cost(spares));
      }
    }
  }
  CHECK(cost({own.spares, team->shared[0].part.spares, team->shared[1].part.spares}) ==
        Approx(least));
  int alone = 0;
  for (const std::string ref : {"P-1", "P-2", "P-3"}) {
    auto of = request(120);
    of.patient = ref;
    // As sure together as the team: each to the third root.
    of.wanted = std::cbrt(0.99);
    const auto by_itself = check_travel(assessment, of);
    REQUIRE(by_itself);
    for (const auto& part : by_itself->parts) alone += part.spares;
  }
  CHECK(own.spares + team->shared[0].part.spares + team->shared[1].part.spares <= alone);
  const auto words = team_text(*team, today);
  CHECK(words.find("Shared by P-1 (left) and P-2 (left): ") != std::string::npos);
  CHECK(words.find("nobody of 3 patients is left without") != std::string::npos);
}

TEST_CASE("Who may not wear an item does not share it, and a team is two at least") {
  auto clinic = camp();
  clinic.items[0].constituents = {"mineral oil"};
  clinic.sensitivities = {
      Sensitivity{{"P-2"}, "mineral oil", "rash", "patch test", make_date(2026, 1, 1)}};
  const auto assessment = forecast(clinic, built_in_priors(), today);
  const auto team = check_team(assessment, request(120), {"P-1", "P-2"});
  REQUIRE(team);
  REQUIRE(team->shared.size() == 1);
  CHECK(team->shared[0].part.item.text == "LK");
  CHECK_FALSE(team->reached);
  CHECK(check_team(assessment, request(30), {"P-1"}).error().sentence.starts_with("Name two"));
  CHECK(check_team(assessment, request(30), {"P-1", "P-1"}).error().sentence ==
        "P-1 is named twice; name each patient once.");
  CHECK_FALSE(check_team(assessment, request(30), {"P-1", "P-9"}));
}

TEST_CASE("Where parts can be had at the place fewer spares are needed, and it is said") {
  const auto assessment = forecast(camp(), built_in_priors(), today);
  auto of = request(300);
  const auto without = check_travel(assessment, of);
  of.resupply_days = 5;
  const auto with = check_travel(assessment, of);
  REQUIRE(with);
  int spares_without = 0;
  int spares_with = 0;
  for (const auto& part : without->parts) spares_without += part.spares;
  for (const auto& part : with->parts) spares_with += part.spares;
  CHECK(spares_with < spares_without);
  CHECK(with->with_spares >= 0.99);
  // Without a spare the first failure is one too many all the same.
  CHECK(with->without_spares == Approx(without->without_spares));
  CHECK(travel_part_words(*with, 0, today).find("There another can be had in 5 days.") !=
        std::string::npos);
  CHECK(travel_cautions(of)[0].find("Ask there before leaving") != std::string::npos);
}

TEST_CASE("Water counts as high sweating at least, with its cautions by kind and no figure") {
  const auto assessment = forecast(camp(), built_in_priors(), today);
  auto of = request(120);
  const double dry = check_travel(assessment, of)->without_spares;
  CHECK(water_cautions(*check_travel(assessment, of)).empty());
  of.use.sweating = Sweating::high;
  const double hot = check_travel(assessment, of)->without_spares;
  of.use.sweating = Sweating::low;
  of.use.water = true;
  const auto wet = check_travel(assessment, of);
  CHECK(wet->without_spares == hot);
  CHECK(wet->without_spares < dry);
  const auto cautions = water_cautions(*wet);
  REQUIRE(cautions.size() == 3);  // in general, liners, locks
  CHECK(cautions[0].find("no figure is known") != std::string::npos);
  CHECK(cautions[1].starts_with("Liners:"));
}

TEST_CASE("Spares on the shelf are lent for the trip, unless a check stops one") {
  auto clinic = camp();
  const auto assessment = forecast(clinic, built_in_priors(), today);
  const auto check = check_travel(assessment, request(200));
  REQUIRE(check);
  REQUIRE(check->parts[0].spares > 0);
  CHECK(lending_words(*check).find("of L1, lot A, from main store") != std::string::npos);
  const auto store =
      store::open_in_memory([] { return std::chrono::system_clock::time_point{today}; });
  const auto work = store->begin_write({"tester", "a trip"});
  work->save(clinic.settings);
  for (const auto& each : clinic.items) work->put(each);
  for (const auto& each : clinic.patients) work->put(each);
  for (const auto& each : clinic.prostheses) work->put(each);
  for (const auto& each : clinic.units) work->put(each);
  for (const auto& level : clinic.shelf) {
    StockMovement receipt;
    receipt.lot = level.lot;
    receipt.place = level.place;
    receipt.quantity = level.quantity;
    receipt.on = today;
    work->record(receipt);
  }
  const auto lent = lend_spares(*work, *check, today);
  REQUIRE_MESSAGE(lent, lent.error().sentence);
  const auto loans = work->all<Loan>();
  REQUIRE_FALSE(loans.empty());
  CHECK(loans[0].record.patient.text == "P-1");
  CHECK(loans[0].record.due_on == check->last_day);
  auto stopped = *check;
  stopped.parts[0].stops = {{"conflict", care::Gravity::stops, true, "It holds mineral oil."}};
  CHECK(lend_spares(*work, stopped, today)
            .error()
            .sentence.starts_with("It holds mineral oil. "
                                  "Nothing was lent."));
  auto nothing = *check;
  for (auto& part : nothing.parts) part.take.clear();
  CHECK_FALSE(lend_spares(*work, nothing, today));
}

}  // namespace travel_team_test
