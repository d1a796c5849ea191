#include <algorithm>

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"

namespace import_folder_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

/// The clinic after one file has been imported beside the full folder's.
struct Imported {
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
  desk::ImportReport report;

  Imported() { write_full_folder(folder); }
  Clinic again(desk::ImportOptions options = {}) {
    report = import(*store, folder.path(), std::move(options));
    return store::load_clinic(*store->read());
  }
};

const Unit& unit_with_serial(const Clinic& clinic, const std::string& serial) {
  const auto found = std::ranges::find(clinic.units, serial, &Unit::serial);
  REQUIRE(found != clinic.units.end());
  return *found;
}

}  // namespace

TEST_CASE("A folder with every file is taken whole") {
  Imported run;
  const auto clinic = run.again();
  CHECK(refusals(run.report) == std::vector<std::string>{});
  CHECK(run.report.clean());
  CHECK(run.report.files.size() == 16);
  CHECK(run.report.rejects_folder.empty());
  CHECK(clinic.suppliers.size() == 2);
  CHECK(clinic.items.size() == 3);
  CHECK(clinic.units.size() == 5);
  CHECK(clinic.order_lines.size() == 3);
  CHECK(clinic.claim_lines.size() == 1);
  CHECK(clinic.invoice_lines.size() == 1);
  CHECK(clinic.billing_codes.size() == 1);
  CHECK(clinic.payer_rules.size() == 2);
  CHECK(clinic.part_papers.size() == 1);
  for (const auto& file : run.report.files) {
    CAPTURE(file.file);
    CHECK(file.added == file.rows);
    CHECK(file.refusal.empty());
  }
}

TEST_CASE("The same folder again changes nothing, not even the change log") {
  Imported run;
  const auto first = run.again();
  const auto changes = change_count(*run.store);
  const auto movements = run.store->read()->movements().size();
  const auto second = run.again();
  CHECK(same_clinic(first, second));
  CHECK(change_count(*run.store) == changes);
  CHECK(run.store->read()->movements().size() == movements);
  for (const auto& file : run.report.files) {
    CAPTURE(file.file);
    CHECK(file.unchanged == file.rows);
  }
}

TEST_CASE("An end that is filled in later, and one that is cleared, reach the unit") {
  Imported run;
  CHECK_FALSE(unit_with_serial(run.again(), "S2").ended_on);
  const auto issued = full_folder().at("issued.csv");
  run.folder.write("issued.csv",
                   replaced(issued, "2025-07-05,,,0.5", "2025-07-05,2025-12-01,leak,"));
  const auto ended = unit_with_serial(run.again(), "S2");
  CHECK(ended.ended_on == make_date(2025, 12, 1));
  CHECK(ended.end_reason == EndReason::leak);
  CHECK_FALSE(ended.share);
  CHECK(report_of(run.report, "issued.csv").changed == 1);
  CHECK(report_of(run.report, "issued.csv").unchanged == 4);
  run.folder.write("issued.csv", issued);
  CHECK_FALSE(unit_with_serial(run.again(), "S2").ended_on);
}

TEST_CASE("A column that a file lacks leaves what is stored") {
  Imported run;
  run.again();
  run.folder.write("patients.csv", "patient_ref,next_visit\nP1,2027-01-01\n");
  run.folder.write("orders.csv",
                   "supplier,order_ref,item_code,ordered_on,quantity\n"
                   "Nordpol Teile,O-1,LN-1,2025-01-01,5\n");
  const auto clinic = run.again();
  CHECK(clinic.patients[0].family_name == "Muster");
  CHECK(clinic.patients[0].next_visit == make_date(2027, 1, 1));
  CHECK(report_of(run.report, "orders.csv").unchanged == 1);
}

TEST_CASE("Alike rows are numbered in the order of the file") {
  Imported run;
  const auto clinic = run.again();
  std::vector<int> copies;
  for (const auto& unit : clinic.units) {
    if (unit.item.text == "SK-1") copies.push_back(unit.copy);
  }
  CHECK(copies == std::vector<int>{1, 2, 3});
  CHECK(clinic.order_lines[1].copy == 1);
  CHECK(clinic.order_lines[2].copy == 2);
}

TEST_CASE("Amounts take their row's currency, else the supplier's, else the clinic's") {
  Imported run;
  {
    const auto work = run.store->begin_write({"tester", "settings"});
    auto settings = work->settings();
    settings.currency = {"CHF"};
    work->save(settings);
    work->commit();
  }
  const auto clinic = run.again();
  CHECK(clinic.items[0].unit_cost == Money{10000, {"EUR"}});
  CHECK(clinic.items[1].unit_cost == Money{450, {"USD"}});
  CHECK(clinic.items[2].currency == Currency{"CHF"});
  CHECK(clinic.claim_lines[0].charge == Money{50000, {"CHF"}});
  CHECK(clinic.order_lines[0].unit_cost == Money{9500, {"EUR"}});
}

TEST_CASE("An unknown patient or item refuses the row, an unknown supplier is made") {
  Imported run;
  run.folder.write("usage.csv", "patient_ref,from_date\nP1,2024-01-01\nP0009,2024-01-01\n");
  run.folder.write("issued.csv",
                   "patient_ref,side,item_code,issued_on\nP1,left,XX-1,2024-01-01\n"
                   "P1,left,LN-1,2024-01-01\n");
  run.folder.write("invoices.csv",
                   "supplier,invoice_ref,item_code,quantity\nWestpol,I-1,LN-1,5\n"
                   "Ostpol,I-1,XX-9,5\n");
  const auto clinic = run.again();
  CHECK(refusals(run.report) ==
        std::vector<std::string>{
            "usage.csv 3 patient_ref: 'P0009' is in neither patients.csv nor the database; add it "
            "there or correct it",
            "issued.csv 2 item_code: 'XX-1' is in neither catalogue.csv nor the database; add it "
            "there or correct it",
            "invoices.csv 3 item_code: 'XX-9' is in neither catalogue.csv nor the database; add it "
            "there or correct it"});
  REQUIRE(clinic.suppliers.size() == 3);
  CHECK(clinic.suppliers[2].name.text == "Westpol");
  CHECK(report_of(run.report, "invoices.csv").notes ==
        std::vector<std::string>{
            "Line 2: the supplier 'Westpol' was not known; it was made with its name alone."});
}

TEST_CASE("The same record twice in a file is refused, naming the first line") {
  Imported run;
  run.folder.write("patients.csv", "patient_ref,given_name\nP1,Ada\nP2,\nP1,Eva\n");
  run.folder.write("usage.csv",
                   "patient_ref,from_date,activity\nP1,2024-01-01,K1\nP1,2024-01-01,K2\n");
  run.folder.write("issued.csv",
                   "patient_ref,side,item_code,issued_on,copy\nP1,left,LN-1,2024-01-01,2\n"
                   "P1,left,LN-1,2024-01-01,2\n");
  const auto clinic = run.again();
  CHECK(
      refusals(run.report) ==
      std::vector<std::string>{
          "patients.csv 4 patient_ref: names the same record as line 2; remove one of them, or "
          "correct this one",
          "usage.csv 3 : names the same record as line 2; remove one of them, or correct this one",
          "issued.csv 3 copy: names the same record as line 2; give it another number in the "
          "column "
          "copy, or remove it"});
  CHECK(clinic.patients[0].given_name == "Ada");
}

TEST_CASE("An order line that the program drafted becomes the file's") {
  Imported run;
  run.again();
  {
    const auto work = run.store->begin_write({"tester", "draft"});
    OrderLine draft;
    draft.supplier.text = "Nordpol Teile";
    draft.order_ref = "SW-2026-0001";
    draft.item.text = "LN-1";
    draft.ordered_on = import_day();
    draft.quantity = 3;
    draft.state = OrderState::draft;
    work->put(draft);
    work->commit();
  }
  run.folder.write("orders.csv",
                   "supplier,order_ref,item_code,ordered_on,quantity\n"
                   "Nordpol Teile,SW-2026-0001,LN-1,2026-11-25,4\n");
  const auto clinic = run.again();
  CHECK(report_of(run.report, "orders.csv").changed == 1);
  REQUIRE(clinic.order_lines.size() == 4);
  CHECK(clinic.order_lines[3].state == OrderState::placed);
  CHECK(clinic.order_lines[3].quantity == 4);
}

TEST_CASE("A folder is read as its separator, decimal sign and dates are declared") {
  ClinicFolder folder;
  folder.write("patients.csv", "\xEF\xBB\xBFpatient_ref;birth_date\r\nP1;03.02.1950\r\n");
  folder.write(
      "measurements.csv",
      "patient_ref;side;measured_on;at_cm;circumference_cm\r\nP1;left;01.12.2025;4;28,4\r\n");
  const auto store = empty_store();
  desk::ImportOptions options;
  options.format = {';', ',', *DatePattern::from_text("DD.MM.YYYY")};
  const auto report = import(*store, folder.path(), options);
  CHECK(refusals(report) == std::vector<std::string>{});
  const auto clinic = store::load_clinic(*store->read());
  REQUIRE(clinic.measurements.size() == 1);
  CHECK(clinic.measurements[0].circumference_cm == 28.4);
  CHECK(clinic.measurements[0].measured_on == make_date(2025, 12, 1));
}

TEST_CASE("A file that is refused whole is reported, and the others are taken") {
  Imported run;
  run.folder.write("usage.csv", "patient_ref;from_date\nP1;2024-01-01\n");
  run.folder.write("claims.csv", "PK\x03\x04 a workbook");
  const auto clinic = run.again();
  CHECK(report_of(run.report, "usage.csv").refusal ==
        "usage.csv looks separated by ';', not by a comma; declare it with --separator ';'.");
  CHECK(report_of(run.report, "claims.csv").refusal.find("is a workbook") != std::string::npos);
  CHECK_FALSE(run.report.clean());
  CHECK(run.report.refused.empty());
  CHECK(clinic.usage.empty());
  CHECK(clinic.units.size() == 5);
}

TEST_CASE("Unknown files are noted, file names may be in capitals, and absent files are allowed") {
  ClinicFolder folder;
  folder.write("Patients.CSV", "patient_ref\nP1\n");
  folder.write("readme.txt", "hello");
  const auto store = empty_store();
  const auto report = import(*store, folder.path());
  CHECK(report.notes == std::vector<std::string>{
                            "The file readme.txt is not one of a clinic folder and was left out."});
  CHECK(report.files.size() == 1);
  CHECK(report_of(report, "patients.csv").added == 1);
  CHECK_THROWS_AS((void)import(*store, folder.path() / "missing"), std::runtime_error);
}

TEST_CASE("A stopped import undoes the file at hand and keeps those before it") {
  Imported run;
  std::stop_source source;
  desk::ImportOptions options;
  options.stop = source.get_token();
  options.progress = [&](const desk::ImportProgress&) { source.request_stop(); };
  const auto clinic = run.again(options);
  CHECK(run.report.cancelled);
  CHECK_FALSE(run.report.clean());
  CHECK(clinic.suppliers.empty());
  CHECK(run.report.files.empty());
  CHECK(run.report.notes ==
        std::vector<std::string>{"The import was stopped: nothing of suppliers.csv "
                                 "was kept, files before it were."});
}

TEST_CASE("Progress names the files and never goes back") {
  Imported run;
  double last = 0;
  int calls = 0;
  desk::ImportOptions options;
  options.progress = [&](const desk::ImportProgress& progress) {
    CHECK(progress.done >= last);
    CHECK(progress.done <= 1);
    CHECK_FALSE(progress.file.empty());
    last = progress.done;
    ++calls;
  };
  run.again(options);
  CHECK(calls >= 1);
}

}  // namespace import_folder_test
