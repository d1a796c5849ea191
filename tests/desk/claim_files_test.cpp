// Files of claims and payments against a real database, and the sample clinic's own claims.
#include "desk/billing/claim_files.hpp"

#include <doctest/doctest.h>

#include "desk/billing/adjustment_words.hpp"
#include "desk/billing/claim_file_words.hpp"
#include "desk/billing/table_mapping.hpp"
#include "desk/clinic_folder.hpp"
#include "exchange/x12/claims_written.hpp"

namespace claim_files_test {

using namespace sparewell;
using namespace sparewell::desk;
using namespace sparewell::exchange::testing;
using sparewell::test::ClinicFolder;

namespace {

const store::Author author{"tester", "test"};
constexpr const char* payer = "Northfield Health";

/// Ada, and Bert and Cora who share a member number.
struct SmallClinic {
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = test::empty_store();

  SmallClinic() {
    const auto work = store->begin_write(author);
    put(*work, "P-1", "Ada", make_date(1961, 2, 14), "M-1001");
    put(*work, "P-2", "Bert", make_date(1970, 3, 1), "M-1002");
    put(*work, "P-3", "Cora", make_date(2001, 4, 5), "M-1002");
    work->commit();
  }
  static void put(store::UnitOfWork& work, const char* ref, const char* given, Date born,
                  const char* member) {
    Patient patient{{ref}, given, "Samplename", born, {}};
    patient.member_id = member;
    patient.payer = payer;
    work.put(patient);
  }

  BillingFileOutcome read(BillingFileKind kind, const std::string& name, const std::string& text,
                          BillingFileRequest request = {}) {
    folder.write(name, text);
    request.kind = kind;
    request.file = folder.path() / name;
    auto outcome = read_billing_file(*store, request, author);
    REQUIRE_MESSAGE(outcome, (outcome ? "" : outcome.error().sentence));
    return *outcome;
  }
  BillingFileOutcome claims(const std::string& text) {
    return read(BillingFileKind::claims, "claims.837", text);
  }
  BillingFileOutcome payments(const std::string& text) {
    return read(BillingFileKind::remittance, "paid.835", text);
  }
  std::string refusal(BillingFileKind kind, const std::string& text,
                      BillingFileRequest request = {}) {
    folder.write("other", text);
    request.kind = kind;
    request.file = folder.path() / "other";
    const auto outcome = read_billing_file(*store, request, author);
    return outcome ? "" : outcome.error().sentence;
  }
  template <class Record>
  std::vector<Record> stored() {
    std::vector<Record> records;
    for (auto& row : store->read()->all<Record>()) records.push_back(std::move(row.record));
    return records;
  }
};

std::string claims_text() {
  return x12_made({small_claims()}).text;
}

bool holds(const std::vector<std::string>& lines, std::string_view part) {
  return std::ranges::any_of(
      lines, [&](const auto& line) { return line.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("claims find their patients, and the file read again changes nothing") {
  SmallClinic clinic;
  const auto first = clinic.claims(claims_text());
  CHECK(first.added == 3);
  CHECK(first.refused.empty());
  CHECK(first.written);
  const auto lines = clinic.stored<ClaimLine>();
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].patient.text == "P-1");
  CHECK(lines[0].line_control == "CL-1/1");
  CHECK(lines[0].payer == payer);
  // Cora, by her birth date, though Bert has the same member number.
  CHECK(lines[2].patient.text == "P-3");
  CHECK(lines[2].replaces == "PAYER-77");
  const auto changes = clinic.store->read()->changes(100).size();
  const auto again = clinic.claims(claims_text());
  CHECK(again.added == 0);
  CHECK(again.changed == 0);
  CHECK(again.unchanged == 3);
  CHECK(clinic.stored<ClaimLine>() == lines);
  CHECK(clinic.store->read()->changes(100).size() == changes);
}

TEST_CASE("a dry run says the same and writes nothing") {
  SmallClinic clinic;
  BillingFileRequest request;
  request.dry_run = true;
  const auto outcome = clinic.read(BillingFileKind::claims, "claims.837", claims_text(), request);
  CHECK(outcome.added == 3);
  CHECK_FALSE(outcome.written);
  CHECK(clinic.stored<ClaimLine>().empty());
  CHECK(holds(claim_file_lines(outcome), "dry run"));
}

TEST_CASE("lines of nobody known are refused into a file, corrected there, and taken") {
  SmallClinic clinic;
  auto text = claims_text();
  const auto at = text.find("M-1001");
  text.replace(at, 6, "M-9999");
  text.replace(text.find("19610214"), 8, "19610215");
  const auto outcome = clinic.claims(text);
  CHECK(outcome.added == 1);
  REQUIRE(outcome.refused.size() == 2);
  CHECK(outcome.refused[0].column == "patient_ref");
  CHECK(outcome.refused_sum == Money{147574, {"USD"}});
  CHECK(outcome.ties_out() == (outcome.stated.minor == outcome.kept.minor + 147574));
  for (const auto& line : claim_file_problems(outcome)) {
    CHECK(line.find("Samplename") == std::string::npos);
    CHECK(line.find("Ada") == std::string::npos);
  }
  auto rejects = test::text_of(outcome.rejects_folder / "claims.csv");
  CHECK(rejects.find("Samplename") == std::string::npos);
  for (std::size_t cut = 0; (cut = rejects.find("CL-1,,", cut)) != std::string::npos;) {
    rejects.replace(cut, 6, "CL-1,P-1,");
  }
  const auto corrected = clinic.read(BillingFileKind::claims, "corrected.csv", rejects);
  CHECK(corrected.added == 2);
  CHECK(corrected.refused.empty());
  CHECK(clinic.stored<ClaimLine>().size() == 3);
}

TEST_CASE(
    "a claim of the clinic folder is completed, not doubled, and a reversal stands beside it") {
  SmallClinic clinic;
  {
    const auto work = clinic.store->begin_write(author);
    ClaimLine line;  // as claims.csv has it: neither payer nor line number, the side in its column
    line.claim_ref = "CL-1";
    line.patient = {"P-1"};
    line.side = Side::right;
    line.service_date = make_date(2026, 11, 3);
    line.code = "L5673";
    line.quantity = 2;
    line.charge = Money{121950, {"USD"}};
    work->put(line);
    work->commit();
  }
  const auto outcome = clinic.claims(claims_text());
  CHECK(outcome.changed == 1);
  CHECK(outcome.added == 2);
  auto text = claims_text();
  text.replace(text.find("11:B:1"), 6, "11:B:8");
  const auto reversal = clinic.claims(text);
  CHECK(reversal.added == 2);
  CHECK(reversal.unchanged == 1);
  const auto lines = clinic.stored<ClaimLine>();
  REQUIRE(lines.size() == 5);
  CHECK(lines[0].submission == Submission::original);
  CHECK(lines[0].payer == payer);
  CHECK(lines[3].submission == Submission::reversal);
  CHECK(lines[3].charge == Money{-121950, {"USD"}});
  CHECK(clinic.claims(text).added == 0);
}

TEST_CASE("payments are kept once, tie out, and learn later whose they are") {
  SmallClinic clinic;
  auto text = x12_made({sample_payment()}).text;
  text.replace(text.find("M-1001"), 6, "M-9999");
  const auto first = clinic.payments(text);
  CHECK(first.added == 2);
  CHECK(first.without_patient == 1);
  CHECK(first.ties_out());
  CHECK(first.stated == Money{5652, {"USD"}});
  REQUIRE(clinic.stored<Remittance>().size() == 1);
  CHECK(clinic.stored<Remittance>()[0].source == "paid.835");
  const auto again = clinic.payments(text);
  CHECK(again.unchanged == 2);
  CHECK(again.clean());
  const auto known = clinic.payments(x12_made({sample_payment()}).text);
  CHECK(known.changed == 1);
  CHECK(clinic.stored<RemittanceLine>()[0].patient.text == "P-1");
  SUBCASE("another content under the same reference is refused") {
    text.replace(text.find("CAS*CO*42*0.18"), 14, "CAS*CO*45*0.18");
    const auto other = clinic.payments(text);
    REQUIRE(other.refused.size() == 1);
    CHECK(other.ties_out());
    CHECK(other.rejects_folder.empty());
    CHECK(clinic.stored<RemittanceLine>()[0].adjustments[0] == "CO:42:0.18:0");
  }
}

TEST_CASE("the headings of a table suggest its columns") {
  const ClinicFolder folder;
  folder.write("a.csv", "Claim No;DOS;HCPCS\nCL-5;11/03/2026;L5673\n");
  folder.write("b.csv", "claim_ref;service_date;code\nCL-5;2026-11-03;L5673\n");
  BillingFileRequest request;
  request.separator = ';';
  request.file = folder.path() / "a.csv";
  CHECK(suggested_columns(request) == "claim_ref=Claim No;service_date=DOS;code=HCPCS");
  request.file = folder.path() / "b.csv";
  CHECK(suggested_columns(request).empty());
  request.file = folder.path() / "c.csv";
  CHECK(suggested_columns(request).empty());
}

TEST_CASE("tables need a mapping that was seen, and keep it under a name") {
  SmallClinic clinic;
  const std::string table =
      "Claim No;DOS;HCPCS;Units;Charges;Member\n"
      "CL-5;11/03/2026;L5673;2;1219,50;M-1001\nCL-5;11/03/2026;L8420;-6;156,24;M-1001\n";
  BillingFileRequest request;
  request.separator = ';';
  const auto refusal = clinic.refusal(BillingFileKind::claims, table, request);
  const std::string columns =
      "claim_ref=Claim No;service_date=DOS;code=HCPCS;quantity=Units;charge=Charges;"
      "member_id=Member";
  CHECK(refusal.find("--map '" + columns + "'") != std::string::npos);
  request.columns = columns;
  request.date_pattern = "MM/DD/YYYY";
  request.decimal_sign = ",";
  request.save_as = "office";
  const auto outcome = clinic.read(BillingFileKind::claims, "table.csv", table, request);
  CHECK(outcome.added == 2);
  CHECK(outcome.clean());
  const auto lines = clinic.stored<ClaimLine>();
  CHECK(lines[1].quantity == 6);
  CHECK(lines[1].charge == Money{-15624, {"USD"}});
  BillingFileRequest by_name;
  by_name.separator = ';';
  by_name.mapping = "Office";
  CHECK(clinic.read(BillingFileKind::claims, "table.csv", table, by_name).unchanged == 2);
  CHECK_FALSE(clinic.refusal(BillingFileKind::remittance, table, by_name).empty());
}

TEST_CASE("a table of payments is added to, line by line, and its rejects too") {
  SmallClinic clinic;
  const std::string start =
      "payer,reference,paid_on,claim_ref,patient_ref,code,charge,paid\n"
      "northfield health,PAY-1,2026-11-20,CL-1,P-1,L5673,100,80\n"
      "northfield health,PAY-1,2026-11-20,CL-1,P-1,L5673,100,80\n";
  const auto first =
      clinic.read(BillingFileKind::remittance, "paid.csv",
                  start + "northfield health,PAY-1,20.11.2026,CL-2,P-2,L5673,100,80\n");
  CHECK(first.added == 2);
  CHECK(first.ties_out());
  REQUIRE(first.refused.size() == 1);
  CHECK(clinic.stored<Remittance>()[0].payer == payer);
  CHECK(clinic.read(BillingFileKind::remittance, "paid.csv", start).unchanged == 2);
  auto rejects = test::text_of(first.rejects_folder / "remittance.csv");
  rejects.replace(rejects.find("20.11.2026"), 10, "2026-11-20");
  CHECK(clinic.read(BillingFileKind::remittance, "again.csv", rejects).added == 1);
  CHECK(clinic.read(BillingFileKind::remittance, "again.csv", rejects).unchanged == 1);
  CHECK(clinic.stored<Remittance>()[0].total == Money{24000, {"USD"}});
}

TEST_CASE("a file of the other kind, or of none, is refused in one sentence") {
  SmallClinic clinic;
  CHECK(clinic.refusal(BillingFileKind::remittance, claims_text()) ==
        "other is a file of claims (837); read it as one.");
  CHECK(clinic.refusal(BillingFileKind::claims, x12_made({sample_payment()}).text) ==
        "other is a file of payments (835); read it as one.");
  CHECK_FALSE(clinic.refusal(BillingFileKind::claims, "ISA*00*").empty());
  CHECK_FALSE(clinic.refusal(BillingFileKind::claims, "nothing,known\n1,2\n").empty());
}

TEST_CASE("codes of adjustments have plain words, and unknown ones stay as they are") {
  CHECK(adjustment_words("CO:16") == "CO 16, information is missing or wrong");
  CHECK(adjustment_words("PI:9999") == "PI 9999");
  CHECK(adjustment_words("OA:unstated; CO:97") ==
        "another adjustment without a reason; CO 97, included in the payment for another service");
  CHECK(adjustment_code_words("PR") == "the patient's share");
}

TEST_CASE("the sample clinic's claims, written as 837 and answered by 835, come back whole") {
  ClinicFolder folder;
  const auto store = test::empty_store();
  ImportOptions options;
  options.today = make_date(2026, 11, 25);
  options.rejects_folder = folder.path() / "refused";
  static_cast<void>(import_folder(*store, SPAREWELL_SAMPLE "/clinic", author, options));
  const auto clinic = store::load_clinic(*store->read());
  std::map<PatientRef, Patient> patients;
  for (const auto& patient : clinic.patients) patients.emplace(patient.ref, patient);
  std::vector<ClaimLine> lines;
  for (const auto& line : clinic.claim_lines) {
    // What takes back by a negative charge alone has no word of its own in this form.
    if (line.charge && line.charge->minor > 0) lines.push_back(line);
  }
  REQUIRE(lines.size() > 1500);
  folder.write("claims.837", x12_made({claims_written(lines, patients, payer)}).text);
  BillingFileRequest request;
  request.file = folder.path() / "claims.837";
  const auto read = read_billing_file(*store, request, author);
  REQUIRE(read);
  CHECK(read->added == 0);
  CHECK(read->changed + read->unchanged == static_cast<int>(lines.size()));
  CHECK(read->clean());
  folder.write("paid.835", x12_made({payment_written(lines, payer, "PAY-1", options.today)}).text);
  request.kind = BillingFileKind::remittance;
  request.file = folder.path() / "paid.835";
  const auto paid = read_billing_file(*store, request, author);
  REQUIRE(paid);
  CHECK(paid->added == static_cast<int>(lines.size()));
  CHECK(paid->without_patient == 0);
  CHECK(paid->clean());
}

}  // namespace claim_files_test
