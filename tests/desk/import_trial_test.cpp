#include "desk/import_trial.hpp"

#include <fstream>

#include <doctest/doctest.h>

namespace import_trial_test {

using namespace sparewell;
using namespace sparewell::desk;
namespace fs = std::filesystem;

TEST_CASE("A dry run says what an import would do, and writes neither file nor folder") {
  const auto folder = fs::temp_directory_path() / "sparewell-trial-test";
  fs::remove_all(folder);
  fs::create_directories(folder / "in");
  std::ofstream{folder / "in" / "patients.csv"} << "patient_ref,birth_date\nP-1,1980-02-03\n"
                                                   "P-2,never\n";
  const ClinicFile file{(folder / "clinic.db").string(), make_date(2026, 11, 25), "anna"};
  const JobControl control{[](const JobProgress&) {}, {}};
  const auto check = [&] {
    const auto trial = try_folder(file, folder / "in", {}, control);
    REQUIRE(trial.report.files.size() == 1);
    CHECK(trial.report.files.front().added == 1);
    REQUIRE(trial.report.refused.size() == 1);
    CHECK(trial.report.refused.front().line == 3);
    CHECK(trial.report.refused.front().column == "birth_date");
    CHECK_FALSE(fs::exists(folder / "in" / "rejects"));
    // No patients are missing any more; everything else is, ten kinds of records.
    CHECK(trial.missing.size() == 10);
    CHECK(trial_summary(trial).find("Nothing has been imported yet.") == 0);
  };
  SUBCASE("without a clinic file") {
    check();
    CHECK_FALSE(fs::exists(file.path));
  }
  SUBCASE("with one") {
    make_clinic_file(file);
    check();
    CHECK(open_store(file)->read()->all<Patient>().empty());
    CHECK(open_store(file)->read()->changes(5).empty());
  }
  fs::remove_all(folder);
}

}  // namespace import_trial_test
