#include "supply/play/simulate.hpp"

#include <algorithm>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "wear/small_clinic.hpp"

namespace simulate_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::play;
using sparewell::testing::plain_priors;
using supply::testing::clinic_with_item;
using supply::testing::today;

namespace {

/// Forty patients, each handed out a new liner about every nine months for three years.
Clinic clinic_with_history() {
  Clinic clinic = clinic_with_item();
  std::mt19937 random{5};
  for (int patient = 0; patient < 40; ++patient) {
    Date day = today - days{1100 - 6 * patient};
    while (day <= today) {
      Unit unit;
      unit.patient = {fmt::format("P{}", patient)};
      unit.item = {"L1"};
      unit.lot = "A";
      unit.issued_on = day;
      day += days{200 + static_cast<int>(random() % 140)};
      if (day <= today) {
        unit.ended_on = day;
        unit.end_reason = EndReason::hole;
      }
      clinic.units.push_back(unit);
    }
  }
  return clinic;
}

SimulationPlan small_plan() {
  SimulationPlan plan;
  plan.futures = 3;
  return plan;
}

const Totals& run_of(const Played& played, const Setting& setting) {
  return *std::ranges::find(played.runs, setting, &Totals::setting);
}

}  // namespace

TEST_CASE("Nothing handed out: one sentence and no play") {
  const auto made = simulate(clinic_with_item(), plain_priors(), today, {});
  REQUIRE_FALSE(made);
  CHECK(made.error().sentence.find("nothing to play") != std::string::npos);
}

TEST_CASE("What is asked for in the past is what was handed out in the months counted") {
  const Clinic clinic = clinic_with_history();
  const auto made = simulate(clinic, plain_priors(), today, small_plan());
  REQUIRE(made);
  REQUIRE(made->past.size() == 1);
  const Played& past = made->past.front();
  const auto handed_out = std::ranges::count_if(clinic.units, [&](const Unit& unit) {
    return unit.issued_on >= past.period.counted_from && unit.issued_on <= today;
  });
  CHECK(past.period.end == today);
  for (const Totals& run : past.runs) {
    CHECK(run.pieces == handed_out);
    CHECK(run.served_at_once + run.kept_waiting == handed_out);  // a piece for each
    CHECK(run.rush <= run.kept_waiting);
  }
  CHECK(past.currency.code == "EUR");
}

TEST_CASE("Higher targets and factors hold more and keep fewer waiting") {
  const auto made = simulate(clinic_with_history(), plain_priors(), today, small_plan());
  REQUIRE(made);
  REQUIRE(made->futures.size() == 1);
  for (const Played* played : {&made->past.front(), &made->futures.front()}) {
    const Totals* before = nullptr;
    for (const Totals& run : played->runs) {
      if (before != nullptr && before->setting.policy == run.setting.policy &&
          before->setting.rounding == run.setting.rounding) {
        CHECK(run.stock >= before->stock);
        CHECK(run.fill_rate() >= before->fill_rate());
      }
      before = &run;
    }
    CHECK(run_of(*played, {Policy::min_max, 0, Rounding::nearest}).fill_rate() < 0.2);
  }
  CHECK(made->futures.front().worlds == 3);
  CHECK(made->futures.front().period.start == today);
}

TEST_CASE("A future asks for about as much as wears out") {
  // Lives of 200 to 340 days, so that forty patients need about 54 pieces a year.
  SimulationPlan plan;
  plan.futures = 30;
  const auto made = simulate(clinic_with_history(), plain_priors(), today, plan);
  REQUIRE(made);
  const Totals& run = made->futures.front().runs.front();
  CHECK(static_cast<double>(run.pieces) / 30 > 44);
  CHECK(static_cast<double>(run.pieces) / 30 < 60);
}

TEST_CASE("The order of the records does not matter") {
  Clinic clinic = clinic_with_history();
  const auto one = simulate(clinic, plain_priors(), today, small_plan());
  std::ranges::reverse(clinic.units);
  const auto other = simulate(clinic, plain_priors(), today, small_plan());
  REQUIRE(one);
  REQUIRE(other);
  for (std::size_t i = 0; i < one->past.front().runs.size(); ++i) {
    CHECK(one->past.front().runs[i].stock == other->past.front().runs[i].stock);
    CHECK(one->futures.front().runs[i].stock ==
          doctest::Approx(other->futures.front().runs[i].stock).epsilon(1e-9));
    CHECK(one->futures.front().runs[i].pieces == other->futures.front().runs[i].pieces);
  }
}

TEST_CASE("Too little past is said, and futures are played all the same") {
  Clinic clinic = clinic_with_history();
  std::erase_if(clinic.units, [](const Unit& unit) { return unit.issued_on < today - days{500}; });
  const auto made = simulate(clinic, plain_priors(), today, small_plan());
  REQUIRE(made);
  CHECK(made->past.empty());
  CHECK(made->past_refused.find("choose fewer months") != std::string::npos);
  CHECK(made->futures.size() == 1);
}

TEST_CASE("A play that is stopped says so") {
  int asked = 0;
  const auto made =
      simulate(clinic_with_history(), plain_priors(), today, small_plan(), [&](double done) {
        CHECK(done >= 0);
        CHECK(done <= 1);
        return ++asked < 3;
      });
  REQUIRE_FALSE(made);
  CHECK(asked == 3);
  SimulationPlan wrong;
  wrong.months = 0;
  CHECK_THROWS_AS((void)simulate(clinic_with_history(), plain_priors(), today, wrong),
                  std::invalid_argument);
}

TEST_CASE("Items without a cost and those ordered for a patient are left out and counted") {
  Clinic clinic = clinic_with_history();
  clinic.items.push_back(supply::testing::stocked_item("L2"));
  clinic.items.back().unit_cost.reset();
  clinic.items.push_back(supply::testing::stocked_item("L3"));
  clinic.items.back().stocked = false;
  const auto made = simulate(clinic, plain_priors(), today, small_plan());
  REQUIRE(made);
  CHECK(made->without_cost == 1);
  CHECK(made->patient_ordered == 1);
  CHECK(made->past.front().items == 1);
}

}  // namespace simulate_test
