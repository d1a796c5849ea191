#include "exchange/x12/claims_837.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "x12_made.hpp"

namespace claims_837_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

struct Result {
  X12File file;
  ClaimsRead claims;
};

Result read(const MadeTransaction& transaction) {
  auto file = *read_x12("claims.837", x12_made({transaction}).text);
  auto claims = read_claims_837(file, {"USD"});
  return {std::move(file), std::move(claims)};
}

/// The line with its patient filled in.
ClaimLine line_of(ClaimRow row) {
  row.cells["patient_ref"] = "P-1";
  ClaimLine line;
  const auto fault = read_claim_row(row, {"USD"}, line);
  CHECK_MESSAGE(!fault, (fault ? fault->reason : ""));
  return line;
}

std::string column_refused(const ClaimRow& row) {
  ClaimLine line;
  auto with_patient = row;
  with_patient.cells["patient_ref"] = "P-1";
  const auto fault = read_claim_row(with_patient, {"USD"}, line);
  return fault ? fault->column : "";
}

void put(MadeTransaction& transaction, std::string_view start, const std::string& segment) {
  const auto at = std::ranges::find_if(transaction.segments,
                                       [&](const std::string& s) { return s.starts_with(start); });
  REQUIRE(at != transaction.segments.end());
  *at = segment;
}

}  // namespace

// The layout of SV1 is that of the public segment reference (HC and up to four modifiers, charge,
// unit, quantity); CLM, DTP*472, REF*6R and REF*F8 from memory.
TEST_CASE("Claims are read with side, day, charge, payer and line number") {
  const auto [file, claims] = read(small_claims());
  REQUIRE(claims.rows.size() == 3);
  CHECK(claims.claims == 2);
  const auto first = line_of(claims.rows[0]);
  CHECK(first.claim_ref == "CL-1");
  CHECK(first.side == Side::right);
  CHECK(first.service_date == make_date(2026, 11, 3));
  CHECK(first.code == "L5673");
  CHECK(first.modifiers == std::vector<std::string>{"RT"});
  CHECK(first.quantity == 2);
  CHECK(first.charge == Money{121950, {"USD"}});
  CHECK(line_of(claims.rows[1]).modifiers == std::vector<std::string>{"RT", "RA"});
  CHECK(claims.rows[0].cells.at("payer") == "Northfield Health");
  CHECK(claims.rows[0].cells.at("line_control") == "CL-1/1");
  CHECK(claims.rows[0].person.member_id == "M-1001");
  CHECK(claims.rows[0].person.birth_date == make_date(1961, 2, 14));
}

TEST_CASE("A claim that takes one back has charges below zero and keeps the payer's number") {
  const auto [file, claims] = read(small_claims());
  const auto& row = claims.rows.at(2);
  CHECK(row.cells.at("submission") == "reversal");
  // Not OTHER-78, which is another payer's number.
  CHECK(row.cells.at("replaces") == "PAYER-77");
  CHECK(row.cells.at("payer") == "Northfield Health");
  CHECK(line_of(row).charge == Money{-50, {"USD"}});
  CHECK(line_of(row).side == Side::left);
  // The patient, insured under the subscriber's number.
  CHECK(row.person.given_name == "Cora");
  CHECK(row.person.birth_date == make_date(2001, 4, 5));
  CHECK(row.person.member_id == "M-1002");
}

TEST_CASE("A claim whose lines do not add up is said, and all of it is kept") {
  const auto [file, claims] = read(small_claims());
  // CL-1: 1219.50 + 256.24 = 1475.74 as stated; CL-2 states 0 and has a line of 0.50.
  REQUIRE(file.reading.differences.size() == 1);
  CHECK(file.reading.differences[0].find("CL-2 states 0.00") != std::string::npos);
  CHECK(claims.stated == Money{147574, {"USD"}});
  CHECK(claims.summed == Money{147574 - 50, {"USD"}});
  CHECK(file.reading.unread.empty());
  CHECK(file.reading.read == file.reading.segments);
  // One note: the range of days.
  CHECK(file.reading.notes.size() == 1);
}

TEST_CASE("Fractional, missing and unreadable cells are refused by column, nothing else is lost") {
  auto transaction = small_claims();
  put(transaction, "SV1*HC:L5673", "SV1*HC:L5673:RT*1219.5*UN*1.5***1");
  put(transaction, "SV1*HC:L8420", "SV1*HC:L8420:RT:LT*12x*UN****1");
  const auto [file, claims] = read(transaction);
  REQUIRE(claims.rows.size() == 3);
  CHECK(column_refused(claims.rows[0]) == "quantity");
  CHECK(column_refused(claims.rows[1]) == "quantity");
  CHECK(claims.rows[1].cells.at("charge") == "12x");
  CHECK(claims.rows[1].cells.at("side").empty());
  CHECK(claims.summed == Money{121950 - 50, {"USD"}});
}

TEST_CASE("What is not understood is listed without a name, and dropped alone") {
  auto transaction = small_claims();
  put(transaction, "HI*", "ZZZ*1*Samplename");
  put(transaction, "DTP*472*D8*20261103", "DTP*472*XX*20261103");
  put(transaction, "CLM*CL-2", "CLM*CL-2*0***11:B:3*Y*A*Y*Y");
  const auto [file, claims] = read(transaction);
  REQUIRE(file.reading.unread.size() == 2);
  CHECK(file.reading.unread[0].text == "ZZZ");
  CHECK(file.reading.unread[1].text == "DTP*472*XX*20261103");
  CHECK(file.reading.read + 2 == file.reading.segments);
  CHECK(claims.rows.size() == 3);
  CHECK(column_refused(claims.rows[0]) == "service_date");
  CHECK(claims.rows[2].cells.at("submission") == "3");
}

TEST_CASE("Refused rows are written in the form of claims.csv") {
  auto [file, claims] = read(small_claims());
  claims.rows[0].fault = Fault{"patient_ref", "is not known"};
  const auto text = claim_rejects_text({claims.rows[0]});
  CHECK(text.starts_with("claim_ref,patient_ref,side,service_date,code,modifiers,quantity,charge"));
  CHECK(text.find("CL-1,,right,2026-11-03,L5673,RT,2,1219.50") != std::string::npos);
  CHECK(text.find("patient_ref,is not known") != std::string::npos);
  CHECK(text.find("Samplename") == std::string::npos);
}

}  // namespace claims_837_test
