#include "desk/order_sliders.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "desk/newest_work.hpp"
#include "desk/order_page.hpp"
#include "desk/sample_day.hpp"
#include "desk/slider_words.hpp"

namespace order_sliders_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

/// Forty users of one stocked item of which two are there.
DayPtr ordering_day(const std::optional<Money>& budget = std::nullopt) {
  auto day = test_assessment();
  auto& clinic = day.clinic;
  clinic.settings.currency = {"EUR"};
  for (auto& supplier : clinic.suppliers) supplier.order_days = *parse_order_days("Wed");
  for (auto& item : clinic.items) item.unit_cost = Money{20000, {"EUR"}};
  for (int i = 0; i < 40; ++i) {
    clinic.units.push_back(
        test_unit(fmt::format("Q-{}", i), Side::left, i % 2 ? "A-28" : "B-28", "", 300));
    day.lives.push_back(
        {clinic.units.size() - 1, {test_today, 300.0, 3.0, 400.0, {{test_today, 1.0}}}});
  }
  clinic.shelf.push_back({{{"A-28"}, "L1", std::nullopt}, "main store", 2});
  day.budget = budget;
  auto policy = supply::policy_of(clinic.settings);
  policy.budget = budget;
  auto proposal = supply::propose(clinic, day.lives, test_today, policy);
  day.proposal = std::move(proposal.lines);
  day.held = std::move(proposal.held);
  return std::make_shared<const Day>(std::move(day));
}

void check_same(const supply::DecidedOrders& decided, const DayPtr& day,
                const SliderSetting& setting) {
  const auto& assessment = day->assessment();
  const auto asked = policy(setting, *day);
  const auto proposal = supply::propose(assessment.clinic, assessment.lives, test_today, asked);
  const auto outcome = supply::what_if(assessment.clinic, assessment.lives, test_today, asked);
  REQUIRE(decided.proposal.lines.size() == proposal.lines.size());
  for (std::size_t i = 0; i < proposal.lines.size(); ++i) {
    CHECK(decided.proposal.lines[i].item == proposal.lines[i].item);
    CHECK(decided.proposal.lines[i].quantity == proposal.lines[i].quantity);
    CHECK(decided.proposal.lines[i].chance_short == proposal.lines[i].chance_short);
  }
  CHECK(decided.outcome.goods == outcome.goods);
  CHECK(decided.outcome.short_before == outcome.short_before);
  CHECK(decided.outcome.short_after == outcome.short_after);
  CHECK(decided.outcome.patients_late == outcome.patients_late);
  CHECK(decided.outcome.items_below_target == outcome.items_below_target);
}

}  // namespace

TEST_CASE("What the sliders say is exactly what the same policy proposes") {
  // supply::propose and supply::what_if, each worked out from nothing.
  const auto day = ordering_day();
  OrderSliders sliders;
  sliders.show(day);
  DecisionBench bench{day};
  const auto usual = sliders.usual();
  check_same(*bench.decide(usual), day, usual);
  for (const double percent : {80.0, 99.5, 90.0}) {
    for (const int wait : {0, 3, 28}) {
      auto setting = usual;
      setting.target_percent = percent;
      setting.wait_days = wait;
      check_same(*bench.decide(setting), day, setting);
    }
  }
  auto setting = usual;
  setting.budget = Money{100000, {"EUR"}};
  check_same(*bench.decide(setting), day, setting);
  for (int wait = 0; wait <= 10; ++wait) {  // more days than are kept
    setting.wait_days = wait;
    check_same(*bench.decide(setting), day, setting);
  }
  check_same(*bench.decide(usual), day, usual);
}

TEST_CASE("The sliders stand at the clinic's settings, and go back to them") {
  const auto day = ordering_day();
  OrderSliders sliders;
  sliders.show(day);
  CHECK_FALSE(sliders.moved());
  CHECK(sliders.setting().target_percent == 100 * day->clinic().settings.service_target);
  CHECK(sliders.budget_step() == sliders.budget_steps());
  CHECK_FALSE(sliders.budget_at(sliders.budget_steps()));
  auto setting = sliders.usual();
  setting.target_percent = 300;
  setting.wait_days = 90;
  sliders.set(setting);
  CHECK(sliders.moved());
  CHECK(sliders.setting().target_percent == most_target_percent);
  CHECK(sliders.setting().wait_days == most_wait_days);
  CHECK(sliders.wait_words() == "order on 23 Dec 2026");
  CHECK_FALSE(sliders.only_budget());
  setting = sliders.usual();
  setting.budget = sliders.budget_at(1);
  sliders.set(setting);
  CHECK(sliders.only_budget());
  CHECK(sliders.budget_step() == 1);
  sliders.set(sliders.usual());
  CHECK_FALSE(sliders.moved());
}

TEST_CASE("A budget is typed as an amount, and what is none is refused") {
  OrderSliders sliders;
  sliders.show(ordering_day());
  const auto typed = sliders.read_budget("1250.50");
  REQUIRE(typed);
  CHECK(*typed == Money{125050, {"EUR"}});
  CHECK_FALSE(sliders.read_budget("")->has_value());
  CHECK_FALSE(sliders.read_budget("much"));
}

TEST_CASE("A target that was moved goes before the costs from which it would follow") {
  auto assessment = test_assessment();
  assessment.clinic.settings.costs.shortage = Money{5000, {"EUR"}};
  const Day day{std::move(assessment)};
  SliderSetting setting{100 * day.clinic().settings.service_target, 0, std::nullopt};
  CHECK(policy(setting, day).costs.shortage);
  CHECK_FALSE(policy(setting, day).order_on);
  setting.target_percent = 85;
  CHECK_FALSE(policy(setting, day).costs.shortage);
  CHECK(policy(setting, day).service_target == doctest::Approx(0.85));
}

TEST_CASE("Two ways of ordering stand beside each other with their difference in words") {
  supply::Outcome usual;
  usual.lines = 4;
  usual.pieces = 10;
  usual.goods[{"EUR"}] = 120000;
  usual.short_after = 0.52;
  supply::Outcome other = usual;
  other.lines = 3;
  other.goods[{"EUR"}] = 100050;
  other.short_after = 1.24;
  const auto rows = slider_rows(usual, other);
  REQUIRE(rows.size() == 7);
  CHECK(rows[0].cells[3].text == "1 fewer");
  CHECK(rows[0].strong);
  CHECK(rows[1].cells[3].text == "the same");
  CHECK_FALSE(rows[1].strong);
  CHECK(rows[2].cells[3].text == "199.50 EUR less");
  CHECK(difference_words(usual, other) ==
        "Than by the settings: 1 order line fewer and 199.50 EUR less. Pieces expected to be "
        "missing before the next order arrives: 0.7 more; parts for patients too late: the same.");
  CHECK(difference_words(usual, usual) ==
        "The orders come to the same lines and money. As many pieces are expected to be missing, "
        "and to come late.");
}

TEST_CASE("The order page sets changed lines apart, and shows today's again") {
  const auto day = ordering_day();
  REQUIRE(!day->assessment().proposal.empty());
  OrderPage page;
  page.show(day);
  const auto lines = page.lines().size();
  auto otherwise = std::make_shared<supply::DecidedOrders>();
  otherwise->proposal.lines = day->assessment().proposal;
  otherwise->proposal.lines.front().quantity += 2;
  otherwise->proposal.lines.pop_back();
  page.show_otherwise(otherwise);
  REQUIRE(page.lines().size() == lines);
  CHECK(page.today_count() == lines);
  CHECK(page.lines().at(0).strong);
  CHECK(page.lines().at(0).cells[3].text.find("(today ") != std::string::npos);
  CHECK(page.lines().at(lines - 1).cells[3].text.starts_with("0 (today "));
  CHECK(page.detail(page.lines().at(lines - 1).id).title != "");
  page.show_otherwise(nullptr);
  CHECK(page.lines().at(0).cells[3].text.find("today") == std::string::npos);
}

namespace {

/// A worker that does its job when it is told to.
class PatientWorker : public Worker {
 public:
  bool start(Job job) override {
    if (job_) return false;
    job_ = std::move(job);
    return true;
  }
  [[nodiscard]] bool busy() const override { return job_.has_value(); }
  void ask_to_stop() override {}
  void go_on() {
    const Job job = std::move(*job_);
    job.work({});
    job_.reset();
    job.finish({});
  }

 private:
  std::optional<Job> job_;
};

}  // namespace

TEST_CASE("While work is under way the newest question waits, and those before it are dropped") {
  for (const auto keep : {NewestWork::Keep::answers, NewestWork::Keep::newest}) {
    auto owned = std::make_unique<PatientWorker>();
    auto& worker = *owned;
    std::string worked;
    std::string answered;
    NewestWork work{std::move(owned), keep};
    for (const char name : {'a', 'b', 'c'}) {
      work.ask([&worked, name] { worked += name; },
               [&answered, name](const std::exception_ptr&) { answered += name; });
    }
    worker.go_on();
    CHECK(answered == (keep == NewestWork::Keep::answers ? "a" : ""));
    worker.go_on();
    CHECK(worked == "ac");
    CHECK(answered == (keep == NewestWork::Keep::answers ? "ac" : "c"));
    work.ask([] {}, [&answered](const std::exception_ptr&) { answered += 'd'; });
    work.forget();
    worker.go_on();
    CHECK(answered.back() == 'c');
    CHECK_FALSE(worker.busy());
  }
}

}  // namespace order_sliders_test
