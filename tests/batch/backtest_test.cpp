// What the forecasts would have been worth, by the program that users run.
#include <cmath>

#include <doctest/doctest.h>

#include "batch/run_batch.hpp"

namespace backtest_test {

namespace {

using nlohmann::json;

void check_part(const json& coverage) {
  CAPTURE(coverage.dump());
  const double share = coverage["share"];
  CHECK(coverage["low"].get<double>() >= 0);
  CHECK(coverage["low"].get<double>() <= share);
  CHECK(coverage["high"].get<double>() >= share);
  CHECK(coverage["high"].get<double>() <= 1);
}

void check_compared(const json& score) {
  CAPTURE(score.dump());
  for (const char* name : {"sparewell", "calendar", "clinic_weibull"}) {
    REQUIRE(score[name].is_number());
    CHECK(score[name].get<double>() >= 0);
    CHECK(std::isfinite(score[name].get<double>()));
  }
}

void check_scores(const json& scores) {
  CHECK(scores["units"].get<int>() > 0);
  CHECK(scores["events"].get<int>() <= scores["units"].get<int>());
  for (const char* level : {"50", "80", "95"}) check_part(scores["coverage"][level]);
  check_compared(scores["crps"]);
  for (const char* level : {"p10", "p50", "p90"}) check_compared(scores["pinball"][level]);
  CHECK(scores["skill"]["crps"].contains("clinic_weibull"));
}

}  // namespace

TEST_CASE("The sample clinic's forecasts are scored for every kind, and beat both peers over all") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  const std::string day = "2026-11-25";
  REQUIRE(
      run_batch({"--db", db, "--today", day, "import", SPAREWELL_SOURCE_DIR "/sample-data/clinic",
                 "--rejects", (folder / "rejects").string()})
          .status == 0);
  const auto ran = run_batch({"--db", db, "--today", day, "--json", "backtest"});
  CAPTURE(ran.errors);
  REQUIRE(ran.status == 0);
  const auto report = ran.json();
  CHECK(report["today"] == day);
  CHECK(report["horizon_days"] == 180);
  REQUIRE(report["origins"].size() == 6);
  CHECK(report["origins"][5] == "2026-05-29");  // 180 days before
  REQUIRE(report["kinds"].size() > 3);
  int units = 0;
  for (const auto& kind : report["kinds"]) {
    check_scores(kind);
    units += kind["units"].get<int>();
  }
  check_scores(report["all"]);
  CHECK(report["all"]["units"] == units);
  const auto& crps = report["all"]["crps"];
  CHECK(crps["sparewell"].get<double>() < crps["calendar"].get<double>());
  CHECK(crps["sparewell"].get<double>() < crps["clinic_weibull"].get<double>());

  const auto again = run_batch({"--db", db, "--today", day, "--json", "backtest"});
  CHECK(again.out == ran.out);
  const auto words = run_batch({"--db", db, "--today", day, "backtest", "--origins", "2"});
  CHECK(words.status == 0);
  CHECK(words.out.find("liners ended within their 8-in-10 span") != std::string::npos);
  CHECK(words.out.find("nan") == std::string::npos);
}

TEST_CASE("Too little history ends with status 1, one sentence and nulls") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  REQUIRE(run_batch({"--db", db, "clinic", "--name", "Moonmeadow"}).status == 0);
  const auto ran = run_batch({"--db", db, "--today", "2026-11-25", "--json", "backtest"});
  CHECK(ran.status == 1);
  CHECK(ran.errors.find("too little history") != std::string::npos);
  CHECK(ran.errors.find('\n') == ran.errors.size() - 1);
  const auto report = ran.json();
  CHECK(report["origins"].empty());
  CHECK(report["kinds"].empty());
  CHECK(report["all"]["units"] == 0);
  CHECK(report["all"]["coverage"]["80"].is_null());
  CHECK(report["all"]["crps"].is_null());
  CHECK(report["all"]["pinball"]["p50"].is_null());
  const auto words = run_batch({"--db", db, "--today", "2026-11-25", "backtest"});
  CHECK(words.status == 1);
  CHECK(words.out.empty());
  CHECK(run_batch({"--db", db, "backtest", "--origins", "0"}).status == 2);
  CHECK(run_batch({"--db", db, "backtest", "--horizon", "soon"}).status == 2);
}

}  // namespace backtest_test
