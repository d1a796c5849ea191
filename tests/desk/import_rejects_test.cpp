#include <algorithm>

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/speaking.hpp"

namespace import_rejects_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

/// What is spoiled in a folder, and how it is put right in the rejects.
struct Spoil {
  std::string file;
  std::string right;
  std::string wrong;
};

const std::vector<Spoil> spoils{{"suppliers.csv", "Mon;Thu", "Montag"},
                                {"catalogue.csv", "SK-1,Sock,sock", "SK-1,Sock,stocking"},
                                {"patients.csv", "1950-02-03", "03.02.1950"},
                                {"prostheses.csv", "transfemoral", "thigh"},
                                {"usage.csv", "1.5,14", "1.5,140"},
                                {"sensitivities.csv", "2023-05-05", "2023-15-05"},
                                {"measurements.csv", "28.4", "284"},
                                {"reactions.csv", "2025-02-09,itching", "2025-01-09,itching"},
                                {"issued.csv", "2025-07-05,hole", "2025-07-05,broken"},
                                {"stock.csv", "L9,2027-01-31,1", "L9,2027-01-31,one"},
                                {"orders.csv", "95.00,2025-01-15", "95.00,2024-01-15"},
                                {"claims.csv", "1,500", "one,500"},
                                {"invoices.csv", "I-1,O-1,LN-1,5", "I-1,O-1,LN-1,-5"}};

std::vector<std::string> names_in(const std::filesystem::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator{folder}) {
    names.push_back(entry.path().filename().string());
  }
  std::ranges::sort(names);
  return names;
}

}  // namespace

TEST_CASE("Corrected rejects give the same database as a folder that was right at once") {
  ClinicFolder clean;
  write_full_folder(clean);
  const auto expected = empty_store();
  CHECK(import(*expected, clean.path()).clean());

  ClinicFolder spoiled;
  write_full_folder(spoiled);
  for (const auto& spoil : spoils) {
    spoiled.write(spoil.file, replaced(full_folder().at(spoil.file), spoil.right, spoil.wrong));
  }
  const auto store = empty_store();
  auto report = import(*store, spoiled.path());
  CHECK_FALSE(report.clean());
  CHECK(report.rejects_folder == spoiled.path() / "rejects");

  // Rows that were refused only because another was are right as they are.
  ClinicFolder corrected;
  for (const auto& name : names_in(report.rejects_folder)) {
    auto text = text_of(report.rejects_folder / name);
    for (const auto& spoil : spoils) {
      if (spoil.file == name) text = replaced(text, spoil.wrong, spoil.right);
    }
    corrected.write(name, text);
  }
  report = import(*store, corrected.path());
  CHECK(refusals(report) == std::vector<std::string>{});
  CHECK(same_clinic(store::load_clinic(*store->read()), store::load_clinic(*expected->read())));
  const auto changes = change_count(*store);
  CHECK(import(*store, corrected.path()).clean());
  CHECK(import(*store, clean.path()).clean());
  CHECK(change_count(*store) == changes);
}

TEST_CASE("A refused row among alike ones keeps its number") {
  ClinicFolder folder;
  folder.write("catalogue.csv", "item_code,kind\nA,sock\n");
  folder.write("patients.csv", "patient_ref\nP1\n");
  folder.write("issued.csv",
               "patient_ref,side,item_code,issued_on,share\nP1,left,A,2025-01-01,0.1\n"
               "P1,left,A,2025-01-01,2\nP1,left,A,2025-01-01,0.3\n");
  const auto store = empty_store();
  auto report = import(*store, folder.path());
  REQUIRE(report.refused.size() == 1);
  CHECK(text_of(report.rejects_folder / "issued.csv") ==
        "patient_ref,side,item_code,issued_on,share,copy,rejected_line,rejected_column,"
        "rejected_reason,rejected_text\r\n"
        "P1,left,A,2025-01-01,2,2,3,share,\"'2' is outside what is possible (a share of the time, "
        "0 to "
        "1); correct it\",\r\n");
  ClinicFolder corrected;
  corrected.write("issued.csv",
                  replaced(text_of(report.rejects_folder / "issued.csv"), "-01,2,2", "-01,0.2,2"));
  report = import(*store, corrected.path());
  CHECK(report_of(report, "issued.csv").added == 1);
  const auto units = store::load_clinic(*store->read()).units;
  REQUIRE(units.size() == 3);
  CHECK(units[2].copy == 2);
  CHECK(units[2].share == 0.2);
}

TEST_CASE("A row whose key was wrong is not taken for its twin when it is corrected") {
  ClinicFolder folder;
  folder.write("catalogue.csv", "item_code,kind\nA,sock\n");
  folder.write("patients.csv", "patient_ref\nP1\n");
  const std::string issued =
      "patient_ref,side,item_code,issued_on\nP1,left,A,2025-01-01\nP1,left,A,2025-13-01\n"
      "P1,left,A,2025-01-01\nP1,left,A,2025-02-01\nP1,left,A,2025-14-01\n";
  folder.write("issued.csv", issued);
  const auto store = empty_store();
  const auto report = import(*store, folder.path());
  REQUIRE(report.refused.size() == 2);
  auto text = text_of(report.rejects_folder / "issued.csv");
  CHECK(text.find("\"issued_on 2025-01-01 = 2\nissued_on 2025-02-01 = 1\"") != std::string::npos);
  // One becomes a twin of the others, one stands alone.
  const auto corrected = [](std::string wrong) {
    return replaced(replaced(std::move(wrong), "A,2025-13", "A,2025-01"), "A,2025-14", "A,2025-03");
  };
  ClinicFolder again;
  again.write("issued.csv", corrected(text));
  CHECK(report_of(import(*store, again.path()), "issued.csv").added == 2);
  CHECK(report_of(import(*store, again.path()), "issued.csv").unchanged == 2);
  folder.write("issued.csv", corrected(issued));
  CHECK(report_of(import(*store, folder.path()), "issued.csv").unchanged == 5);
}

TEST_CASE("Rejects imported without a correction are refused again and change nothing") {
  ClinicFolder folder;
  folder.write("patients.csv", "patient_ref,given_name\nP1,Ada\nP1,Eva\nP2\nP3,Ida,x\nP4,5\" Jo\n");
  const auto store = empty_store();
  const auto report = import(*store, folder.path());
  CHECK(report.refused.size() == 4);
  const auto changes = change_count(*store);
  const auto again = import(*store, report.rejects_folder);
  CHECK(again.refused.size() == 4);
  CHECK(change_count(*store) == changes);
  CHECK(
      again.refused[0].reason ==
      "names the same record as line 2, which is stored; correct the key, or clear rejected_reason "
      "to let this row take its place");
}

TEST_CASE("A second row that was refused in Spanish is refused again in English") {
  ClinicFolder folder;
  folder.write("patients.csv", "patient_ref,given_name\nP1,Ada\nP1,Eva\n");
  const auto store = empty_store();
  desk::ImportReport report;
  {
    const Speaking spanish{{"es", "", false}};
    report = import(*store, folder.path());
  }
  REQUIRE(report.refused.size() == 1);
  CHECK(report.refused[0].reason.starts_with("nombra el mismo registro que la línea 2"));
  const auto changes = change_count(*store);
  CHECK(import(*store, report.rejects_folder).refused.size() == 1);
  CHECK(change_count(*store) == changes);
}

TEST_CASE("A second row may take the first one's place when its reason is cleared") {
  ClinicFolder folder;
  folder.write("patients.csv", "patient_ref,given_name,rejected_reason\nP1,Eva,\n");
  const auto store = empty_store();
  ClinicFolder before;
  before.write("patients.csv", "patient_ref,given_name\nP1,Ada\n");
  CHECK(import(*store, before.path()).clean());
  CHECK(report_of(import(*store, folder.path()), "patients.csv").changed == 1);
}

TEST_CASE("Rejects never overwrite what is there, and identical ones are not written again") {
  ClinicFolder folder;
  folder.write("patients.csv", "patient_ref,birth_date\nP1,soon\n");
  const auto store = empty_store();
  CHECK(import(*store, folder.path()).rejects_folder == folder.path() / "rejects");
  CHECK(import(*store, folder.path()).rejects_folder == folder.path() / "rejects");
  folder.write("patients.csv", "patient_ref,birth_date\nP1,later\n");
  const auto before = text_of(folder.path() / "rejects" / "patients.csv");
  CHECK(import(*store, folder.path()).rejects_folder == folder.path() / "rejects-2");
  CHECK(text_of(folder.path() / "rejects" / "patients.csv") == before);
}

TEST_CASE("Rejects go to the folder that is named, and a place that cannot be written is told") {
  ClinicFolder folder;
  folder.write("patients.csv", "patient_ref,birth_date\nP1,=soon\n");
  const auto store = empty_store();
  desk::ImportOptions options;
  options.rejects_folder = folder.path() / "elsewhere" / "bad";
  CHECK(import(*store, folder.path(), options).rejects_folder == options.rejects_folder);
  CHECK(text_of(options.rejects_folder / "patients.csv").find("P1,=soon,2,") != std::string::npos);
  options.rejects_folder = folder.path() / "patients.csv" / "below a file";
  const auto report = import(*store, folder.path(), options);
  CHECK(report.rejects_folder.empty());
  REQUIRE(report.notes.size() == 1);
  CHECK(report.notes[0].starts_with("The refused rows could not be written to "));
  CHECK(report.refused.size() == 1);
}

}  // namespace import_rejects_test
