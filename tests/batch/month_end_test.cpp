// Closing a month and the reports of billing, by the program that users run.
#include <doctest/doctest.h>

#include "batch/sample_clinic.hpp"

namespace month_end_test {

TEST_CASE("a month is closed, listed, and looked at again") {
  const SampleClinic clinic;
  REQUIRE(clinic.imported.status == 0);
  CHECK(clinic.run({"month-end", "changes", "--month", "2026-10"}).status == 2);
  const auto closed = clinic.run({"month-end", "close", "--month", "2026-10", "--by", "Anna"});
  REQUIRE(closed.status == 0);
  const auto books = closed.json();
  CHECK(books["number"] == 1);
  CHECK(books["closed_by"] == "Anna");
  CHECK(books["open_findings"].get<int>() > 0);
  CHECK(books["totals"].size() >= 4);
  const auto listed = clinic.run({"month-end", "list"}).json();
  REQUIRE(listed["closes"].size() == 1);
  CHECK(listed["closes"][0]["totals"] == books["totals"]);
  const auto same = clinic.run({"month-end", "changes", "--month", "2026-10"});
  CHECK(same.status == 0);
  CHECK(same.json()["changes"].empty());
  CHECK(clinic.run({"month-end", "close", "--month", "2026-10", "--by", "Ben"}).status == 2);
  CHECK(clinic.run({"month-end", "close", "--month", "2026-11", "--by", "Ben"}).status == 2);
  CHECK(clinic.run({"month-end", "close", "--month", "October", "--by", "Ben"}).status == 2);
  CHECK(clinic.run({"month-end", "close", "--month", "2026-10"}).status == 2);

  const auto late = (clinic.folder / "late");
  std::filesystem::create_directories(late);
  write_file(late / "claims.csv",
             "claim_ref,patient_ref,side,service_date,code,modifiers,quantity,charge\n"
             "CL-LATE,P-0012,left,2026-10-05,L5673,LT,1,99.50\n");
  REQUIRE(clinic.run({"import", late.string()}).status == 0);
  const auto changed = clinic.run({"month-end", "changes", "--month", "2026-10"});
  CHECK(changed.status == 1);
  const auto found = changed.json();
  REQUIRE(found["changes"].size() == 1);
  CHECK(found["changes"][0]["what"] == "added");
  CHECK(found["changes"][0]["before"].is_null());
  CHECK(found["changes"][0]["difference"]["minor"] == 9950);
  CHECK(found["sums"][0]["sum"] == 99.5);
  CHECK(clinic.tell({"month-end", "changes", "--month", "2026-10"}).out.find("CL-LATE") !=
        std::string::npos);
}

TEST_CASE("the reports of billing are written into a folder") {
  const SampleClinic clinic;
  const auto folder = (clinic.folder / "reports").string();
  const auto told = clinic.run({"billing-reports", "--out", folder});
  REQUIRE(told.status == 0);
  const auto files = told.json()["files"];
  REQUIRE(files.size() == 4);
  for (const auto& file : files) {
    CHECK(file["rows"].get<int>() > 0);
    CHECK(read_file(file["file"].get<std::string>()).starts_with("PK"));
  }
  CHECK(clinic.run({"billing-reports", "--out", "/dev/null/reports"}).status == 2);
  CHECK(clinic.run({"billing-reports"}).status == 2);
}

}  // namespace month_end_test
