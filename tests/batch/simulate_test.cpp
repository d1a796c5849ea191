// The order policy beside common ways of ordering, by the program that users run.
#include <doctest/doctest.h>

#include "batch/run_batch.hpp"

namespace simulate_test {

namespace {

using nlohmann::json;

void check_played(const json& played) {
  CAPTURE(played["currency"].dump());
  CHECK(played["items"].get<int>() > 0);
  REQUIRE(played["runs"].size() > 30);
  const double pieces = played["runs"][0]["pieces"];
  for (const json& run : played["runs"]) {
    CAPTURE(run.dump());
    CHECK(run["pieces"].get<double>() == doctest::Approx(pieces));
    CHECK(run["fill_rate"].get<double>() >= 0);
    CHECK(run["fill_rate"].get<double>() <= 1);
    CHECK(run["kept_waiting"].get<double>() <= run["patients"].get<double>());
    CHECK(run["rush_orders"].get<double>() <= run["kept_waiting"].get<double>());
    CHECK(run["mean_stock"].get<double>() >= 0);
    CHECK(run["orders"].get<double>() > 0);
  }
}

}  // namespace

TEST_CASE("The sample clinic's policy is played over the past and over futures") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  const std::string day = "2026-11-25";
  REQUIRE(
      run_batch({"--db", db, "--today", day, "import", SPAREWELL_SOURCE_DIR "/sample-data/clinic",
                 "--rejects", (folder / "rejects").string()})
          .status == 0);
  const auto ran = run_batch({"--db", db, "--today", day, "--json", "simulate", "--months", "4",
                              "--futures", "2", "--service", "0.9"});
  CAPTURE(ran.errors);
  REQUIRE(ran.status == 0);
  const auto report = ran.json();
  CHECK(report["service_target"] == 0.9);
  REQUIRE(report["past"].size() == 2);
  CHECK(report["past"][0]["currency"] == "EUR");  // most pieces
  CHECK(report["past"][0]["until"] == day);
  CHECK(report["past_refused"].is_null());
  REQUIRE(report["futures"].size() == 2);
  CHECK(report["futures"][0]["plays"] == 2);
  CHECK_FALSE(report["notes"].empty());
  for (const char* which : {"past", "futures"}) {
    for (const json& played : report[which]) check_played(played);
  }
  const auto again = run_batch({"--db", db, "--today", day, "--json", "simulate", "--months", "4",
                                "--futures", "2", "--service", "0.9"});
  CHECK(again.json() == report);
  const auto words =
      run_batch({"--db", db, "--today", day, "simulate", "--months", "2", "--futures", "0"});
  CHECK(words.status == 0);
  CHECK(words.out.find("The last 2 months, EUR") != std::string::npos);
  CHECK(words.out.find("Order when empty") != std::string::npos);
  CHECK(run_batch({"--db", db, "simulate", "--months", "0"}).status == 2);
  CHECK(run_batch({"--db", db, "simulate", "--service", "1"}).status == 2);
}

TEST_CASE("A clinic without records has nothing to play, in one sentence") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  REQUIRE(run_batch({"--db", db, "clinic", "--name", "New"}).status == 0);
  const auto ran = run_batch({"--db", db, "--today", "2026-11-25", "--json", "simulate"});
  CHECK(ran.status == 1);
  CHECK(ran.errors.find("There is nothing to play") != std::string::npos);
  CHECK(ran.json()["past"].empty());
}

}  // namespace simulate_test
