// What the program has learned from the sample clinic: effects of usage, and surprises.
#include <doctest/doctest.h>

#include "batch/run_batch.hpp"

namespace learned_test {

namespace {

const std::string sample = SPAREWELL_SOURCE_DIR "/sample-data/clinic";
const std::string today = "2026-11-25";

/// A scratch folder with the sample clinic's database in it, after `change` was made to its files.
struct ChangedClinic {
  template <class Change>
  explicit ChangedClinic(Change change) {
    const std::string files = (folder / "files").string();
    std::filesystem::copy(sample, files);
    change(files);
    const auto imported = run_batch({"--db", db, "--today", today, "import", files});
    REQUIRE(imported.status == 0);
  }
  ChangedClinic() : ChangedClinic([](const std::string&) {}) {}

  [[nodiscard]] Ran run(std::vector<std::string> words) const {
    words.insert(words.begin(), {"--db", db, "--today", today});
    return run_batch(words);
  }

  ScratchFolder folder;
  std::string db = (folder / "clinic.db").string();
};

}  // namespace

TEST_CASE("The sample clinic's effects are told for every kind, and kneeling shortens sleeves") {
  const ChangedClinic clinic;
  const auto ran = clinic.run({"--json", "effects"});
  REQUIRE(ran.status == 0);
  const auto told = ran.json();
  CHECK(told["today"] == today);
  REQUIRE(told["kinds"].size() == 7);
  for (const auto& kind : told["kinds"]) {
    CHECK(kind["shape"].get<double>() > 0);
    CHECK(kind["units"] >= kind["wear_endings"]);
    CHECK_FALSE(kind["median_days"].empty());
    REQUIRE(kind["effects"].size() == 6);
    for (const auto& effect : kind["effects"]) {
      CHECK(effect["low"] < effect["life_ratio"]);
      CHECK(effect["life_ratio"] < effect["high"]);
      CHECK_FALSE(effect["words"].get<std::string>().empty());
    }
  }
  const auto& sleeves = told["kinds"][1];
  REQUIRE(sleeves["kind"] == "sleeve");
  const auto& kneeling = sleeves["effects"][1];
  CHECK(kneeling["factor"] == "kneeling_hours");
  CHECK(kneeling["amount"] == 2);
  // sample-data/maker/truth.cpp makes it exp(-0.6) = 0.55; the person's own rate blurs it a little.
  CHECK(kneeling["life_ratio"].get<double>() > 0.45);
  CHECK(kneeling["life_ratio"].get<double>() < 0.68);
  CHECK(clinic.run({"effects"}).out.find("kneeling two hours a day: sleeves last 0.") !=
        std::string::npos);
}

TEST_CASE("The sample clinic has no bad lot, and none is flagged") {
  const ChangedClinic clinic;
  const auto ran = clinic.run({"--json", "surprises"});
  CHECK(ran.status == 0);
  const auto found = ran.json();
  CHECK(found["today"] == today);
  REQUIRE(found["lots"].size() > 100);
  REQUIRE(found["items"].size() > 20);
  for (const auto& lot : found["lots"]) CHECK(lot["flagged"] == false);
  for (const auto& unit : found["units"]) {
    CHECK(unit["tail"].get<double>() < 0.01);
    CHECK(unit["wear_age_days"] < unit["median_days"]);
    CHECK(unit["ended_on"].get<std::string>() >= unit["issued_on"].get<std::string>());
    for (const char* key : {"patient_ref", "side", "item_code", "lot", "serial", "end_reason"}) {
      CHECK(unit.contains(key));
    }
  }
}

TEST_CASE("A bad lot is flagged in words and numbers, with status 1 and without any name") {
  const ChangedClinic clinic{[](const std::string& files) {
    std::string issued = read_file(files + "/issued.csv");
    for (int i = 1; i <= 8; ++i) {
      issued += "P-000" + std::to_string(i) + ",left,LS10-22,BAD-LOT,77000" + std::to_string(i) +
                ",2025-05-01,2025-05-15,tear,1\n";
    }
    write_file(files + "/issued.csv", issued);
  }};
  const auto ran = clinic.run({"--json", "surprises"});
  CHECK(ran.status == 1);
  const auto found = ran.json();
  for (const auto& lot : found["lots"]) {
    CHECK(lot["flagged"] == (lot["lot"] == "BAD-LOT"));
  }
  const auto& bad = found["lots"][0];
  CHECK(bad["lot"] == "BAD-LOT");
  CHECK(bad["item_code"] == "LS10-22");
  CHECK(bad["units"] == 8);
  CHECK(bad["early"] == 8);
  CHECK(bad["early_patients"] == 8);
  // Eight with a tenth each, a little less because patients differ, a little more for the kind.
  CHECK(bad["expected"].get<double>() == doctest::Approx(0.8).epsilon(0.1));
  CHECK(bad["p_value"].get<double>() == doctest::Approx(1e-8));
  CHECK(bad["adjusted_p"].get<double>() ==
        doctest::Approx(1e-8 * static_cast<double>(found["lots"].size())));
  const auto told = clinic.run({"surprises"});
  CHECK(told.status == 1);
  CHECK(told.out.find("Lot BAD-LOT of LS10-22: 8 of 8 units wore out early") != std::string::npos);
  CHECK(told.out.find("not proof of a defect") != std::string::npos);
  CHECK(told.out.find("not proof of safety") != std::string::npos);
  const std::string family = "Teaselotter";  // of P-0002
  REQUIRE(read_file(sample + "/patients.csv").find(family) != std::string::npos);
  CHECK((told.out + ran.out).find(family) == std::string::npos);
}

}  // namespace learned_test
