// What a patient may wear, by the program that users run, on the sample clinic.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace sensitivity_test {

namespace {

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A verdict shows its path, and a changed constituent says who is newly affected") {
  const SampleClinic clinic;
  const auto before = clinic.run({"sensitivity", "--everyone"}).json()["against"].size();
  const std::vector<std::string> change{"constituents", "--item", "LS10-22", "--set",
                                        "silicone elastomer; paraffinum liquidum"};
  auto look = change;
  look.push_back("--check");
  const auto looked = clinic.run(look).json();
  CHECK(looked["recorded"] == false);
  const auto changed = clinic.run(change).json();
  CHECK(changed["recorded"] == true);
  CHECK(changed["newly_against"] == looked["newly_against"]);
  CHECK(changed["patients_examined"] == 19);
  const auto after = clinic.run({"sensitivity", "--everyone"}).json()["against"].size();
  CHECK(after == before + changed["newly_against"].size());
  const auto verdicts =
      clinic.run({"sensitivity", "--patient", "P-0059", "--item", "LS10-22"}).json()["verdicts"];
  REQUIRE(verdicts.size() == 1);
  CHECK(verdicts[0]["verdict"] == "conflict");
  REQUIRE(verdicts[0]["path"].size() == 3);
  CHECK(verdicts[0]["path"][0]["name"] == "paraffinum liquidum");
  CHECK(verdicts[0]["path"][2]["name"] == "mineral oil");
  CHECK(has(clinic.tell({"sensitivity", "--patient", "P-0059", "--item", "LS10-22"}).out,
            "does not replace"));
}

TEST_CASE("A decision is kept, listed and withdrawn") {
  const SampleClinic clinic;
  const std::vector<std::string> about{"--patient", "P-0059", "--item", "LS10-22"};
  const auto with = [&](std::vector<std::string> words, std::vector<std::string> more) {
    words.insert(words.end(), about.begin(), about.end());
    words.insert(words.end(), more.begin(), more.end());
    return words;
  };
  CHECK(clinic.run(with({"decision", "add"}, {"--by", "B. Fern", "--because", "tried"})).status == 2);
  (void)clinic.run({"constituents", "--item", "LS10-22", "--set", "white mineral oil"});
  const auto added =
      clinic.run(with({"decision", "add"}, {"--by", "B. Fern", "--because", "skin clear"}));
  REQUIRE(added.status == 0);
  CHECK(added.json()["decisions"][0]["verdict"] == "conflict");
  CHECK(clinic.run(with({"sensitivity"}, {})).json()["verdicts"][0]["gravity"] == "ask");
  CHECK(clinic.run(with({"decision", "withdraw"}, {})).status == 0);
  CHECK(clinic.run(with({"sensitivity"}, {})).json()["verdicts"][0]["gravity"] == "stops");
  const auto listed = clinic.run({"decision", "list"}).json()["decisions"];
  REQUIRE(listed.size() == 1);
  CHECK(listed[0]["withdrawn_on"] == "2026-11-25");
}

TEST_CASE("The clinic adds to what is known of substances, and refusals are one sentence") {
  const SampleClinic clinic;
  CHECK(clinic.run({"substance", "add", "moss oil", "is a", "mineral oil", "--source", "a letter"})
            .status == 0);
  CHECK(clinic.run({"substance", "list"}).json()["relations"].size() == 1);
  CHECK(clinic.run({"substance", "withdraw", "moss oil", "is a", "mineral oil"}).status == 0);
  const auto unknown = clinic.run({"substance", "add", "a", "eats", "b", "--source", "c"});
  CHECK(unknown.status == 2);
  CHECK(has(unknown.errors, "is none of: is a, same as, may contain"));
  CHECK(clinic.run({"note-sensitivity", "--patient", "P-0001", "--substance", "nickel",
                    "--established-by", "guessed"})
            .status == 2);
  const auto noted = clinic.run({"note-sensitivity", "--patient", "P-0001", "--substance", "nickel",
                                 "--established-by", "observed", "--reaction", "redness"});
  CHECK(noted.status <= 1);
  CHECK(noted.json()["patients_examined"] == 20);
}

TEST_CASE("Alternatives are ranked and say what would change; findings name the grave ones") {
  const SampleClinic clinic;
  const auto units = clinic.run({"forecast"}).json()["units"];
  std::vector<std::string> ask;
  for (const auto& unit : units) {
    const auto code = unit["item_code"].get<std::string>();
    if (!code.starts_with("LS10")) continue;
    ask = {"alternatives", "--patient", unit["patient_ref"], "--side", unit["side"], "--item", code};
    break;
  }
  REQUIRE_FALSE(ask.empty());
  const auto ran = clinic.run(ask);
  REQUIRE(ran.status <= 1);
  const auto document = ran.json();
  int last = 0;
  for (const auto& each : document["alternatives"]) {
    CHECK(each["item_code"] != ask.back());
    const int rank = each["suits"] == "suits" ? 0 : 1;
    CHECK(rank >= last);
    last = rank;
    CHECK_FALSE(each["words"].get<std::string>().empty());
  }
  CHECK(clinic.run({"alternatives", "--patient", "P-9999", "--side", "left", "--item", "X"}).status == 2);
  const auto findings = clinic.run({"findings"}).json()["findings"];
  for (const auto& each : findings) CHECK(each["gravity"] != "note");
}

}  // namespace sensitivity_test
