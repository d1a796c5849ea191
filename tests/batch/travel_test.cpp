// The check before a trip of the sample clinic's patients, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace travel_test {

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

TEST_CASE("Parts that can be had at the place make the trip surer, and water less sure") {
  const SampleClinic clinic;
  const auto usual = clinic.run(with(trip, {"--assurance", "0.99"})).json();
  const auto there = clinic.run(with(trip, {"--assurance", "0.99", "--resupply-days", "4"})).json();
  CHECK(usual["resupply_days"].is_null());
  CHECK(there["resupply_days"] == 4);
  const auto pieces = [](const nlohmann::json& document) {
    int sum = 0;
    for (const auto& part : document["parts"]) sum += part["spares"].get<int>();
    return sum;
  };
  CHECK(pieces(there) <= pieces(usual));
  CHECK(there["assurance_with"] >= 0.99);
  const auto wet = clinic.run(with(trip, {"--water"})).json();
  CHECK(wet["assurance_without"] <= usual["assurance_without"]);
  CHECK(wet["water"].size() > 1);
  CHECK(usual["water"].empty());
  const auto told = clinic.tell(with(trip, {"--resupply-days", "4"})).out;
  CHECK(told.find("There another can be had in 4 days.") != std::string::npos);
  CHECK(clinic.run(with(trip, {"--resupply-days", "0"})).status == 2);
}

TEST_CASE("Several who travel together share spares of the same item") {
  const SampleClinic clinic;
  auto team = trip;
  team.insert(team.end(), {"--patient", "P-0001", "--patient", "P-0005"});
  const auto ran = clinic.run(team);
  CAPTURE(ran.errors);
  REQUIRE(ran.status <= 1);
  const auto document = ran.json();
  CHECK(document["members"].size() == 3);
  CHECK_FALSE(document["shared"].empty());
  for (const auto& shared : document["shared"]) CHECK(shared["users"].size() >= 2);
  CHECK(document["assurance_with"] >= document["assurance_without"]);
  CHECK(clinic.tell(team).out.find("nobody of 3 patients is left without") != std::string::npos);
  auto twice = trip;
  twice.insert(twice.end(), {"--patient", "P-0002"});
  CHECK(clinic.run(twice).errors.find("is named twice") != std::string::npos);
}

TEST_CASE("Spares that lie on the shelf are lent until the last day") {
  const SampleClinic clinic;
  const auto before = clinic.run(with(trip, {"--assurance", "0.99"})).json();
  int on_shelf = 0;
  for (const auto& part : before["parts"]) {
    for (const auto& level : part["from_shelf"]) on_shelf += level["quantity"].get<int>();
  }
  const auto lent = clinic.run(with(trip, {"--assurance", "0.99", "--lend"}));
  const auto loans = clinic.run({"stock", "loans"}).json()["loans"];
  if (on_shelf == 0) {
    CHECK(lent.status == 2);
    CHECK(loans.empty());
    return;
  }
  CAPTURE(lent.errors);
  REQUIRE(lent.status <= 1);
  int out = 0;
  for (const auto& loan : loans) {
    CHECK(loan["patient_ref"] == "P-0002");
    CHECK(loan["due_on"] == "2027-01-20");
    out += loan["quantity"].get<int>();
  }
  CHECK(out == on_shelf);
  // What was lent goes along, and is not asked for again.
  const auto after = clinic.run(with(trip, {"--assurance", "0.99"})).json();
  int along = 0;
  for (const auto& part : after["parts"]) {
    along += part["lent"].get<int>();
    CHECK(part["in_use"] == 1);
    CHECK(part["spares"] == 0);
  }
  CHECK(along == out);
  CHECK(after["assurance_without"] == before["assurance_with"]);
}

}  // namespace travel_test
