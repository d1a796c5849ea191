// Papers for patients and for visits of the sample clinic, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace papers_test {

namespace {

bool is_pdf(const std::filesystem::path& file) {
  return read_file(file).starts_with("%PDF-");
}

}  // namespace

TEST_CASE("The card of a trip is written in the languages asked for") {
  const SampleClinic clinic;
  const auto card = clinic.folder / "card.pdf";
  const auto ran = clinic.run({"travel", "--patient", "P-0002", "--from", "2026-12-10", "--to",
                               "2027-01-20", "--card", card.string(), "--language", "en",
                               "--language", "es", "--paper", "letter", "--without-name"});
  CAPTURE(ran.errors);
  REQUIRE(ran.status <= 1);
  CHECK(ran.json()["card"] == card.string());
  CHECK(is_pdf(card));
  const auto refused = clinic.run({"travel", "--patient", "P-0002", "--from", "2026-12-10", "--to",
                                   "2027-01-20", "--card", card.string(), "--language", "xx"});
  CHECK(refused.status == 2);
  CHECK(refused.errors.find("name one of: en, es") != std::string::npos);
}

TEST_CASE("The list of a patient's parts is written") {
  const SampleClinic clinic;
  const auto list = clinic.folder / "parts.pdf";
  const auto ran =
      clinic.run({"parts-list", "--patient", "P-0002", "--out", list.string(), "--language", "es"});
  CAPTURE(ran.errors);
  REQUIRE(ran.status == 0);
  CHECK(ran.json()["pages"] >= 1);
  CHECK(is_pdf(list));
  CHECK(clinic.tell({"parts-list", "--patient", "P-0002", "--out", "/nosuch/list.pdf"}).status ==
        2);
  const auto unknown = clinic.tell({"parts-list", "--patient", "P-9", "--out", list.string()});
  CHECK(unknown.errors.find("There is no patient 'P-9'") != std::string::npos);
}

TEST_CASE("The day's visits are prepared, and a day without any writes nothing") {
  const SampleClinic clinic;
  const auto sheets = clinic.folder / "visits.pdf";
  const auto ran = clinic.run({"visits", "--on", "2026-12-07", "--out", sheets.string()});
  CAPTURE(ran.errors);
  REQUIRE(ran.status <= 1);
  const auto document = ran.json();
  REQUIRE(document["visits"].size() == 4);  // counted in sample-data/clinic/patients.csv
  CHECK(document["pages"] == 5);
  CHECK(is_pdf(sheets));
  for (const auto& visit : document["visits"]) {
    CHECK_FALSE(visit["patient_ref"].get<std::string>().empty());
    for (const auto& near : visit["near_end"]) CHECK(near["words"].get<std::string>() != "");
  }
  const auto none = clinic.folder / "none.pdf";
  const auto empty = clinic.tell({"visits", "--on", "2026-12-06", "--out", none.string()});
  CHECK(empty.status == 0);
  CHECK(empty.out.starts_with("No visit is known for Sun 6 Dec 2026"));
  CHECK_FALSE(std::filesystem::exists(none));
}

}  // namespace papers_test
