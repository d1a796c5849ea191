// Parts handed to patients of the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace issue_test {

namespace {

bool names(const nlohmann::json& findings, const std::string& kind) {
  for (const auto& finding : findings) {
    if (finding["kind"] == kind) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("A conflict stops, is decided by a clinician, proven, ended and signed for") {
  const SampleClinic clinic;
  // P-0059 is sensitive to mineral oil, which the gel sleeves declare.
  const std::vector<std::string> question{"--patient", "P-0059", "--side",
                                          "left",      "--item", "SG04-M"};
  const auto with = [&](std::vector<std::string> words, const std::vector<std::string>& more) {
    words.insert(words.end(), question.begin(), question.end());
    words.insert(words.end(), more.begin(), more.end());
    return clinic.run(words);
  };
  const auto asked = with({"check-issue"}, {});
  CAPTURE(asked.errors);
  CHECK(asked.status == 1);
  CHECK(names(asked.json()["findings"], "conflict"));
  const auto stopped = with({"issue"}, {});
  CHECK(stopped.status == 1);
  CHECK(stopped.json()["recorded"] == false);

  const auto sheet = clinic.folder / "sheet.pdf";
  const auto issued = with({"issue"}, {"--override", "B. Clinician", "--because",
                                       "worn over a sock", "--sheet", sheet.string()});
  CHECK(issued.status == 1);
  REQUIRE(issued.json()["recorded"] == true);
  CHECK(issued.json()["sheet_pages"] == 1);
  CHECK(read_file(sheet).starts_with("%PDF"));
  const auto lot = issued.json()["units"][0]["lot"].get<std::string>();

  const auto marked = clinic.run({"delivered", "--patient", "P-0059", "--signed", today});
  CHECK(marked.status == 0);
  CHECK(marked.json()["units"].size() == 1);
  const auto ended =
      clinic.run({"end-unit", "--patient", "P-0059", "--side", "left", "--item", "SG04-M", "--lot",
                  lot, "--reason", "reaction", "--back-to-shelf"});
  CAPTURE(ended.errors);
  CHECK(ended.status == 0);
  CHECK(ended.json()["back_at"] == "quarantine");
  CHECK(clinic.run({"verify"}).status == 0);
}

TEST_CASE("Wrong questions about an issue end with their own status") {
  const SampleClinic clinic;
  CHECK(clinic.run({"check-issue", "--patient", "P-9999", "--side", "left", "--item", "SG04-M"})
            .status == 2);
  CHECK(clinic.run({"check-issue", "--patient", "P-0059", "--side", "up", "--item", "SG04-M"})
            .status == 2);
  CHECK(clinic
            .run({"issue", "--patient", "P-0059", "--side", "left", "--item", "SG04-M", "--on",
                  "2026-11-26"})
            .status == 2);
  CHECK(clinic.run({"end-unit", "--patient", "P-0059", "--reason", "gone"}).status == 2);
}

}  // namespace issue_test
