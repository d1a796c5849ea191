// Skin reactions of the sample clinic's patients, and what they speak for, by the program that
// users run.
#include <algorithm>

#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace reaction_test {

namespace {

/// The substances or items that cannot be told apart from the first suspect, it included.
std::vector<std::string> first_names(const nlohmann::json& ranking) {
  std::vector<std::string> names;
  for (const auto& each : ranking["suspects"][0]["alike"]) names.push_back(each["name"]);
  return names;
}

/// The patient of a case in sample-data/planted.csv.
std::string planted(const std::string& what) {
  const auto text = read_file(SPAREWELL_SOURCE_DIR "/sample-data/planted.csv");
  const auto at = text.find("\n" + what + ",reactions.csv,");
  REQUIRE(at != std::string::npos);
  const auto from = at + what.size() + 16;
  return text.substr(from, text.find(',', from) - from);
}

}  // namespace

TEST_CASE("The material that was worn when reactions began stands out, with what is like it") {
  const SampleClinic clinic;
  CHECK(clinic.imported.status == 0);
  const auto patient = planted("reactions with a suspect");
  const auto ran = clinic.run({"suspects", "--patient", patient});
  CAPTURE(ran.errors);
  CHECK(ran.status == 1);
  const auto document = ran.json();
  REQUIRE(document["sides"].size() == 1);
  const auto& substances = document["sides"][0]["substances"];
  CHECK(substances["telling"] == "leads");
  const auto names = first_names(substances);
  CHECK(std::ranges::find(names, "dialkyl thioureas") != names.end());
  CHECK(std::ranges::find(names, "polychloroprene") != names.end());
  const auto& first = substances["suspects"][0];
  CHECK(first["exposed_onsets"] == 4);
  CHECK(first["onsets"] == 5);
  CHECK(first["rate_ratio"]["low"] > 1);
  double sum = substances["none_of_these"];
  for (const auto& suspect : substances["suspects"]) sum += suspect["chance"].get<double>();
  CHECK(sum == doctest::Approx(1));
  const auto told = clinic.tell({"suspects", "--patient", patient});
  CHECK(told.out.find("4 of 5 reactions began while this was worn") != std::string::npos);
  CHECK(told.out.find("cannot be told apart") != std::string::npos);
  CHECK(told.out.find("patch test") != std::string::npos);
  CHECK(told.out.find("does not replace") != std::string::npos);
}

TEST_CASE("Where the same was worn all the time, nothing is told") {
  const SampleClinic clinic;
  const auto patient = planted("reactions that tell nothing");
  const auto ran = clinic.run({"suspects", "--patient", patient});
  CHECK(ran.status == 0);
  for (const auto& side : ran.json()["sides"]) {
    CHECK(side["substances"]["telling"] != "leads");
    CHECK(side["items"]["telling"] != "leads");
  }
  const auto told = clinic.tell({"suspects", "--patient", patient}).out;
  CHECK((told.find("Too little to say") != std::string::npos ||
         told.find("nothing can be told") != std::string::npos));
}

TEST_CASE("A reaction is recorded, listed with what was worn, ended, and not recorded twice") {
  const SampleClinic clinic;
  const std::vector<std::string> add{
      "reaction", "add",     "--patient",         "P-0002", "--began",   "2026-11-20", "--side",
      "left",     "--signs", "itching, dry skin", "--note", "distal end"};
  const auto added = clinic.run(add);
  CAPTURE(added.errors);
  CHECK(added.status == 0);
  CHECK(added.json()["signs"] == std::vector<std::string>{"itching", "dry skin"});
  const auto twice = clinic.run(add);
  CHECK(twice.status == 2);
  CHECK(twice.errors.find("is recorded already") != std::string::npos);
  const auto ended =
      clinic.run({"reaction", "end", "--patient", "P-0002", "--ended", "2026-11-24"});
  CHECK(ended.json()["ended_on"] == "2026-11-24");
  CHECK(clinic.run({"reaction", "end", "--patient", "P-0002"}).status == 2);
  const auto log = clinic.run({"reaction", "list", "--patient", "P-0002"}).json()["reactions"];
  REQUIRE(log.size() == 1);
  CHECK(log[0]["recorded"]["note"] == "distal end");
  const auto told = clinic.tell({"reaction", "list", "--patient", "P-0002"}).out;
  CHECK(told.find("Itching and dry skin, left, from 20 Nov 2026 until 24 Nov 2026.") !=
        std::string::npos);
}

TEST_CASE("Reactions that cannot be are refused in one sentence") {
  const SampleClinic clinic;
  const auto refused = [&](std::vector<std::string> words) {
    words.insert(words.begin(), {"reaction", "add"});
    const auto ran = clinic.run(words);
    CHECK(ran.status == 2);
    return ran.errors;
  };
  CHECK(refused({"--patient", "P-9999", "--began", "2026-11-01", "--signs", "rash"})
            .find("There is no patient 'P-9999'") != std::string::npos);
  CHECK(refused({"--patient", "P-0002", "--began", "2026-12-01", "--signs", "rash"})
            .find("still to come") != std::string::npos);
  CHECK(refused({"--patient", "P-0002", "--began", "2026-11-02", "--ended", "2026-11-01", "--signs",
                 "rash"})
            .find("is before its first") != std::string::npos);
  CHECK(refused({"--patient", "P-0002", "--began", "2026-11-02", "--signs", " , "})
            .find("Say what was seen") != std::string::npos);
  CHECK(clinic.run({"suspects", "--patient", "P-9999"}).status == 2);
  // Nothing recorded says nothing about the patient, and says so.
  CHECK(clinic.tell({"reaction", "list", "--patient", "P-0002"})
            .out.find("says nothing about the patient") != std::string::npos);
}

}  // namespace reaction_test
