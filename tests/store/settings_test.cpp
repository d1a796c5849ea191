#include <nlohmann/json.hpp>

#include "store/engines.hpp"

namespace sparewell::store::test::settings_test {
namespace {

const ClinicSettings invented{.name = "Invented Clinic",
                              .ship_to = "Long Lane 1\nNowhere",
                              .currency = {"EUR"},
                              .main_place = "cellar",
                              .service_target = 0.1 + 0.2,
                              .records_begin = make_date(2024, 1, 31),
                              .costs = {0.25, Money{15050, {"EUR"}}, Money{400, {"EUR"}}},
                              .approval_above = Money{50000, {"EUR"}},
                              .billing_begins = make_date(2026, 1, 1),
                              .papers_begin = make_date(2026, 2, 1)};

ClinicSettings with_target(double target) {
  ClinicSettings settings;
  settings.service_target = target;
  return settings;
}

ClinicSettings with_currency(std::string code) {
  ClinicSettings settings;
  settings.currency.code = std::move(code);
  return settings;
}

}  // namespace

TEST_CASE_TEMPLATE("a new clinic has the usual settings", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  CHECK(engine.open()->read()->settings() == ClinicSettings{});
}

TEST_CASE_TEMPLATE("settings come back as saved", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  work->save(invented);
  work->commit();
  CHECK(store->read()->settings() == invented);
}

TEST_CASE_TEMPLATE("only the settings that change are logged", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  work->save(invented);
  const auto before = work->changes(100).size();
  auto changed = invented;
  changed.name = "Another Clinic";
  work->save(changed);
  const auto log = work->changes(100);
  REQUIRE(log.size() == before + 1);
  CHECK(log[0].record_kind == "setting");
  const auto json = nlohmann::json::parse(log[0].before);
  CHECK(json["key"] == "name");
  CHECK(json["value"] == "Invented Clinic");
}

TEST_CASE_TEMPLATE("settings that mean nothing are refused", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  for (const double target : {-0.1, 1.1}) {
    CHECK(error_of([&] { work->save(with_target(target)); }) == StoreError::constraint);
  }
  CHECK(error_of([&] { work->save(with_currency("euro")); }) == StoreError::constraint);
}

}  // namespace sparewell::store::test::settings_test
