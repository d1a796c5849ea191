// Claims and payments by command, from files in X12 form and from tables.
#include <doctest/doctest.h>

#include "batch/run_batch.hpp"
#include "exchange/x12/x12_made.hpp"

namespace claim_file_test {

using namespace sparewell::exchange::testing;

namespace {

struct SmallClinic {
  SmallClinic() {
    write_file(folder / "files/patients.csv",
               "patient_ref,given_name,family_name,birth_date,payer,member_id\n"
               "P-1,Ada,Samplename,1961-02-14,Northfield Health,M-1001\n"
               "P-3,Cora,Samplename,2001-04-05,Northfield Health,M-1002\n");
    REQUIRE(tell({"import", (folder / "files").string()}).status == 0);
  }
  [[nodiscard]] Ran tell(std::vector<std::string> words) const {
    words.insert(words.begin(), {"--db", (folder / "clinic.db").string(), "--today", "2026-11-25"});
    return run_batch(words);
  }
  [[nodiscard]] Ran read(const std::string& command, const std::string& text,
                         const std::vector<std::string>& more = {}) const {
    write_file(folder / "sent", text);
    std::vector<std::string> words{"--json", command, (folder / "sent").string()};
    words.insert(words.end(), more.begin(), more.end());
    return tell(words);
  }

  ScratchFolder folder;
};

std::string balanced_claims() {
  auto text = x12_made({small_claims()}).text;
  // In the made file one claim does not add up.
  return text.replace(text.find("CLM*CL-2*-0*"), 12, "CLM*CL-2*.5*");
}

}  // namespace

TEST_CASE("a claim file is read, said to tie out, and read again without a change") {
  const SmallClinic clinic;
  const auto dry = clinic.read("claim-file", balanced_claims(), {"--dry-run"});
  INFO(dry.errors);
  CHECK(dry.status == 0);
  CHECK_FALSE(dry.json()["written"].get<bool>());
  const auto ran = clinic.read("claim-file", balanced_claims());
  CHECK(ran.status == 0);
  const auto said = ran.json();
  CHECK(said["form"] == "X12");
  CHECK(said["claims"] == 2);
  CHECK(said["added"] == 3);
  CHECK(said["ties_out"] == true);
  CHECK(said["stated"] == doctest::Approx(1475.74 - 0.5));
  CHECK(said["refused"].empty());
  const auto again = clinic.read("claim-file", balanced_claims()).json();
  CHECK(again["added"] == 0);
  CHECK(again["unchanged"] == 3);
}

TEST_CASE("what is refused or does not add up gives status 1 and names nobody") {
  const SmallClinic clinic;
  auto text = x12_made({small_claims()}).text;
  text.replace(text.find("M-1001"), 6, "M-0000").replace(text.find("19610214"), 8, "19610215");
  write_file(clinic.folder / "sent", text);
  const auto ran = clinic.tell({"claim-file", (clinic.folder / "sent").string()});
  CHECK(ran.status == 1);
  CHECK(ran.out.find("2 refused") != std::string::npos);
  CHECK(ran.errors.find("patient_ref") != std::string::npos);
  CHECK(ran.errors.find("CL-2 states 0.00") != std::string::npos);
  CHECK((ran.out + ran.errors).find("Samplename") == std::string::npos);
  CHECK(read_file(clinic.folder / "rejects/claims.csv").find("CL-1") != std::string::npos);
}

TEST_CASE("payments are read, and claims that were denied become findings") {
  const SmallClinic clinic;
  REQUIRE(clinic.read("claim-file", balanced_claims()).status == 0);
  const auto ran =
      clinic.read("remittance",
                  x12_made({{"835",
                             {"BPR*I*975.60*C*ACH*CCP***********20261120", "TRN*1*PAY-1*1",
                              "N1*PR*NORTHFIELD HEALTH", "CLP*CL-1*1*1475.74*975.60**CI*PC-1",
                              "SVC*HC:L5673:RT*1219.5*975.6**2", "DTM*472*20261103",
                              "CAS*CO*45*243.9", "REF*6R*CL-1/1", "SVC*HC:L8420:RT:RA*256.24*0**0",
                              "DTM*472*20261103", "CAS*CO*151*256.24", "REF*6R*CL-1/2"}}})
                      .text);
  INFO(ran.out, ran.errors);
  CHECK(ran.status == 0);
  CHECK(ran.json()["payments"] == 1);
  CHECK(ran.json()["added"] == 2);
  CHECK(ran.json()["without_patient"] == 0);
  const auto reconciled = clinic.tell({"--json", "reconcile"});
  INFO(reconciled.errors);
  CHECK(reconciled.out.find("\"denied\"") != std::string::npos);
  CHECK(reconciled.out.find("CO:151") != std::string::npos);
}

TEST_CASE("a table is read by columns that were named, never by a guess") {
  const SmallClinic clinic;
  const std::string table =
      "Claim No,DOS,HCPCS,Units,Charges,Chart\nCL-7,2026-11-03,L5685,1,99,P-1\n";
  const auto refused = clinic.read("claim-file", table);
  CHECK(refused.status == 2);
  CHECK(refused.errors.find("patient_ref=Chart") != std::string::npos);
  const std::string columns =
      "claim_ref=Claim No;service_date=DOS;code=HCPCS;quantity=Units;charge=Charges;"
      "patient_ref=Chart;payer=\"Northfield Health\"";
  CHECK(clinic.read("claim-file", table, {"--map", columns, "--save-mapping", "office"})
            .json()["added"] == 1);
  const auto by_name = clinic.read("claim-file", table, {"--mapping", "office"});
  CHECK(by_name.status == 0);
  CHECK(by_name.json()["unchanged"] == 1);
  CHECK(by_name.json()["form"] == "table");
  CHECK(clinic.read("remittance", table, {"--mapping", "office"}).status == 2);
}

}  // namespace claim_file_test
