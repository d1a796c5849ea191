// What the program says, and its exit status, when it cannot do what was asked.
#include <doctest/doctest.h>

#include "batch/run_batch.hpp"

namespace refusals_test {

namespace {

/// One sentence: a single line that ends as sentences do.
bool is_one_sentence(const std::string& text) {
  return !text.empty() && text.find('\n') == text.size() - 1 && text.size() > 2 &&
         text[text.size() - 2] == '.';
}

}  // namespace

TEST_CASE("Wrong use ends with status 2") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  CHECK(run_batch({}).status == 2);
  CHECK(run_batch({"no-such-command"}).status == 2);
  CHECK(run_batch({"propose"}).status == 2);
  CHECK(run_batch({"--db", db, "import", (folder / "nowhere").string()}).status == 2);
  REQUIRE(run_batch({"--db", db, "clinic", "--name", "Moonmeadow"}).status == 0);
  const auto date = run_batch({"--db", db, "--today", "25.11.2026", "propose"});
  CHECK(date.status == 2);
  CHECK(is_one_sentence(date.errors));
  const auto item = run_batch({"--db", db, "demand", "--item", "X", "--days", "3"});
  CHECK(item.status == 2);
  CHECK(is_one_sentence(item.errors));
  CHECK(run_batch({"--db", db, "demand", "--item", "X", "--days", "-3"}).status == 2);
  CHECK(run_batch({"--help"}).status == 0);
}

TEST_CASE("A clinic file that cannot be used ends with status 3 and one sentence") {
  const ScratchFolder folder;
  const auto missing = run_batch({"--db", (folder / "none.db").string(), "propose"});
  CHECK(missing.status == 3);
  CHECK(is_one_sentence(missing.errors));
  write_file(folder / "other.db", std::string(5000, 'x'));
  const auto foreign = run_batch({"--db", (folder / "other.db").string(), "propose"});
  CHECK(foreign.status == 3);
  CHECK(is_one_sentence(foreign.errors));
  CHECK(read_file(folder / "other.db") == std::string(5000, 'x'));
}

TEST_CASE("A refused row ends with status 1, keeps the good rows, and can be corrected") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  const std::string files = (folder / "files").string();
  write_file(folder / "files/patients.csv",
             "patient_ref,given_name,family_name,birth_date,next_visit\r\n"
             "P1,Aldo,Quillfeather,1980-02-30,\r\nP2,Bea,Thistledown,1975-05-01,\r\n");
  const auto ran = run_batch({"--db", db, "--json", "import", files});
  CHECK(ran.status == 1);
  const auto report = ran.json();
  REQUIRE(report["refused"].size() == 1);
  CHECK(report["refused"][0]["file"] == "patients.csv");
  CHECK(report["refused"][0]["line"] == 2);
  CHECK(report["refused"][0]["column"] == "birth_date");
  CHECK(report["files"][0]["added"] == 1);

  const std::string rejects = report["rejects_folder"].get<std::string>();
  std::string text = read_file(rejects + "/patients.csv");
  text.replace(text.find("1980-02-30"), 10, "1980-02-28");
  write_file(rejects + "/patients.csv", text);
  const auto again = run_batch({"--db", db, "--json", "import", rejects});
  CHECK(again.status == 0);
  CHECK(again.json()["files"][0]["added"] == 1);
}

TEST_CASE("With no history at all a unit still has sensible dates") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  write_file(folder / "files/catalogue.csv",
             "item_code,description,kind,material,supplier\nL1,Liner,liner,silicone,Moonmeadow\n");
  write_file(folder / "files/patients.csv", "patient_ref,given_name,family_name\nP1,Aldo,Quill\n");
  write_file(folder / "files/issued.csv",
             "patient_ref,side,item_code,lot,serial,issued_on,ended_on,end_reason,share\n"
             "P1,left,L1,,S1,2026-11-20,,,1\n");
  REQUIRE(run_batch({"--db", db, "import", (folder / "files").string()}).status == 0);
  const auto unit =
      run_batch({"--db", db, "--today", "2026-11-25", "--json", "forecast"}).json()["units"][0];
  CHECK(unit["p05"] > "2026-11-25");
  CHECK(unit["p50"] > "2027-02-01");
  CHECK(unit["p95"] < "2032-01-01");
  CHECK(unit["wear_age_days"] == doctest::Approx(5));
}

TEST_CASE("A dry run of an import tells the same and writes nothing") {
  const ScratchFolder folder;
  const std::string db = (folder / "clinic.db").string();
  write_file(folder / "files/patients.csv", "patient_ref,birth_date\nP-1,1980-02-03\nP-2,never\n");
  const auto trial =
      run_batch({"--db", db, "--json", "import", (folder / "files").string(), "--dry-run"});
  CHECK(trial.status == 1);
  CHECK(trial.out.find("\"dry_run\": true") != std::string::npos);
  CHECK(trial.out.find("birth_date") != std::string::npos);
  CHECK(trial.out.find("catalogue.csv") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(db));
  CHECK_FALSE(std::filesystem::exists(folder / "files/rejects"));
}

}  // namespace refusals_test
