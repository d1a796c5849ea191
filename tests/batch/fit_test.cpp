// Fit and measurements of the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace fit_test {

namespace {

std::vector<std::string> measure(const std::string& circumference,
                                 std::initializer_list<const char*> more = {}) {
  std::vector<std::string> words{"measure", "--patient", "P-0002",          "--side",     "left",
                                 "--at",    "4",         "--circumference", circumference};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

}  // namespace

TEST_CASE("The fit of a patient's parts is told with trend, chance and the size that follows") {
  const SampleClinic clinic;
  const auto leaving = clinic.run({"fit", "--leaving", "--by", "2027-11-25"});
  CAPTURE(leaving.errors);
  REQUIRE(leaving.status == 1);
  const auto rows = leaving.json()["parts"];
  REQUIRE(rows.size() > 1);
  bool inside = false;
  double chance = 2;
  for (const auto& row : rows) {
    // Those that are outside come first, then by falling chance.
    if (row["outside_now"] == false && !inside) {
      inside = true;
      chance = 2;
    }
    if (inside) CHECK(row["outside_now"] == false);
    CHECK(row["chance_outside"].get<double>() <= chance);
    chance = row["chance_outside"];
  }
  const std::string patient = rows.back()["patient_ref"];
  const auto fit = clinic.run({"fit", "--patient", patient, "--by", "2027-11-25"});
  REQUIRE(fit.status <= 1);
  const auto document = fit.json();
  CHECK(document["measured"] == true);
  REQUIRE_FALSE(document["parts"].empty());
  for (const auto& part : document["parts"]) {
    if (part["trend"].is_null()) continue;
    CHECK(part["foreseen_low_cm"] < part["foreseen_cm"]);
    CHECK(part["foreseen_cm"] < part["foreseen_high_cm"]);
    CHECK(part["trend"]["measurements"] >= 1);
  }
  const auto told = clinic.tell({"fit", "--patient", patient});
  CHECK(told.out.find("does not replace") != std::string::npos);
}

TEST_CASE("A measurement is recorded, found again and kept in the change log's ways") {
  const SampleClinic clinic;
  const auto before = clinic.run({"fit", "--patient", "P-0002", "--side", "left"}).json();
  const auto last = before["parts"][0]["circumference_cm"].get<double>();
  const auto now = std::to_string(last + 0.1);
  REQUIRE(clinic.run(measure(now)).status == 0);
  CHECK(clinic.tell(measure(now)).out.find("recorded already") != std::string::npos);
  // Another value for the same day has to be meant.
  const auto other = clinic.run(measure(std::to_string(last + 0.2)));
  CHECK(other.status == 2);
  CHECK(other.errors.find("say that you are sure") != std::string::npos);
  CHECK(clinic.tell(measure(std::to_string(last + 0.2), {"--sure"})).out.find("corrected") !=
        std::string::npos);
  const auto after = clinic.run({"fit", "--patient", "P-0002", "--side", "left"}).json();
  CHECK(after["parts"][0]["circumference_cm"].get<double>() == doctest::Approx(last + 0.2));
  CHECK(after["parts"][0]["measured_on"] == today);
}

TEST_CASE("Measurements that cannot be are refused in one sentence") {
  const SampleClinic clinic;
  const auto refused = [&](const std::vector<std::string>& words, const char* part) {
    const auto ran = clinic.run(words);
    CAPTURE(ran.errors);
    CHECK(ran.status == 2);
    CHECK(ran.errors.find(part) != std::string::npos);
  };
  refused(measure("0"), "cannot be");
  refused(measure("-3"), "cannot be");
  refused(measure("151"), "cannot be");
  refused(measure("nan"), "cannot be");
  refused(measure("26", {"--on", "2026-12-01"}), "still to come");
  refused(measure("80"), "say that you are sure");
  auto unknown = measure("26");
  unknown[2] = "P-9999";
  refused(unknown, "There is no patient 'P-9999'");
  auto high = measure("26");
  high[6] = "300";
  refused(high, "height of 300 cm");
  refused({"fit", "--patient", "P-9999"}, "There is no patient");
  refused({"fit"}, "either --patient");
  refused({"fit", "--leaving", "--by", "2020-01-01"}, "before today");
}

}  // namespace fit_test
