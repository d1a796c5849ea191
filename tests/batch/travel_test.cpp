// The check before a trip of the sample clinic's patients, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace {

const std::vector<std::string> trip{"travel",     "--patient", "P-0002",    "--from",
                                    "2026-12-10", "--to",      "2027-01-20"};

std::vector<std::string> with(std::vector<std::string> words,
                              std::initializer_list<const char*> more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

}  // namespace

TEST_CASE("A trip is checked function by function, and what to pack reaches what is wanted") {
  const SampleClinic clinic;
  const auto ran = clinic.run(with(trip, {"--assurance", "0.99"}));
  CAPTURE(ran.errors);
  REQUIRE(ran.status <= 1);
  const auto document = ran.json();
  REQUIRE(document["parts"].size() == 3);  // pin suspension: liner, pin and lock
  CHECK(document["reached"] == true);
  CHECK(document["assurance_with"] >= 0.99);
  double product = 1;
  for (const auto& part : document["parts"]) {
    product *= part["assurance_with"].get<double>();
    int from_shelf = 0;
    for (const auto& level : part["from_shelf"]) from_shelf += level["quantity"].get<int>();
    CHECK(from_shelf + part["to_order"].get<int>() == part["spares"].get<int>());
    if (part["spares"] > 0) CHECK(part["all_with_one_less"] < document["assurance_with"]);
  }
  CHECK(product == doctest::Approx(document["assurance_with"].get<double>()));
  CHECK(document["cautions"].size() == 3);
}

TEST_CASE("A longer, harder trip lasts less surely, and words say so") {
  const SampleClinic clinic;
  const double usual = clinic.run(trip).json()["assurance_without"];
  const double longer = clinic.run(with(trip, {"--delay", "60"})).json()["assurance_without"];
  const double harder =
      clinic.run(with(trip, {"--activity", "K4", "--kneeling", "6", "--sweating", "high"}))
          .json()["assurance_without"];
  CHECK(longer < usual);
  CHECK(harder < usual);
  const auto told = clinic.tell(trip);
  CHECK(told.out.find("what is worn lasts without a spare with") != std::string::npos);
  CHECK(told.out.find("does not replace") != std::string::npos);
}

TEST_CASE("Trips that cannot be checked are refused in one sentence") {
  const SampleClinic clinic;
  auto unknown = trip;
  unknown[2] = "P-9999";
  CHECK(clinic.run(unknown).errors.find("There is no patient 'P-9999'") != std::string::npos);
  auto backwards = trip;
  backwards[6] = "2026-12-01";
  CHECK(clinic.run(backwards).errors.find("is before the departure") != std::string::npos);
  auto past = trip;
  past[4] = "2026-11-01";
  const auto ran = clinic.run(past);
  CHECK(ran.status == 2);
  CHECK(ran.errors.find("has passed") != std::string::npos);
}
