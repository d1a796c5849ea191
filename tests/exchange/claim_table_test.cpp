#include "exchange/claim_table.hpp"

#include <doctest/doctest.h>

namespace claim_table_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const Currency usd{"USD"};

SheetTable csv(const std::string& text, char separator = ',') {
  FolderFormat format;
  format.separator = separator;
  return *read_sheet_bytes("export.csv", text, {}, format);
}

ColumnMapping mapping(std::string_view target, std::string_view columns) {
  ColumnMapping made;
  made.target = target;
  made.columns = *read_mapping_columns(columns, target);
  return made;
}

ClaimLine line_of(ClaimRow row) {
  row.cells["patient_ref"] = "P-1";
  ClaimLine line;
  const auto fault = read_claim_row(row, usd, line);
  CHECK_MESSAGE(!fault, (fault ? fault->column + ' ' + fault->reason : ""));
  return line;
}

std::int64_t left_open(const RemittanceLine& line) {
  auto left = line.charge.minor - line.paid.minor;
  for (const auto& text : line.adjustments) left -= parse_adjustment(text, usd)->amount.minor;
  return left;
}

}  // namespace

TEST_CASE("a mapping is proposed by headings and says what it lacks") {
  const auto table = csv("Report of claims,,,,\nClaim No.,DOS,HCPCS,Units,Charges,Colour\n");
  const auto proposed = propose_mapping(table, claims_target);
  CHECK(mapping_text(proposed) ==
        "claim_ref=Claim No.;service_date=DOS;code=HCPCS;quantity=Units;charge=Charges");
  CHECK_FALSE(has_own_headings(table, claims_target));
  const auto columns = read_mapping_columns("claim_ref=Claim No.;code=HCPCS", claims_target);
  REQUIRE_FALSE(columns);
  CHECK(columns.error().sentence == "A mapping for claims needs a column for service_date.");
  CHECK_FALSE(read_mapping_columns("shoe=Size", claims_target));
  CHECK_FALSE(read_mapping_columns("code=A;code=B", claims_target));
  CHECK(has_own_headings(csv("claim_ref,service date,code,charge\n"), claims_target));
}

TEST_CASE("claims are read by their mapping, in the declared form of dates and decimals") {
  auto by = mapping(claims_target,
                    "claim_ref=No;service_date=Day;code=Code;modifiers=Mods;quantity=Qty;"
                    "charge=Sum;payer=\"Northfield Health\";patient_ref=Pat");
  by.date_pattern = "DD.MM.YYYY";
  by.decimal_sign = ",";
  const auto sheet =
      csv("No;Day;Code;Mods;Qty;Sum;Pat;Note\n"
          "CL-1;03.11.2026;L5673;RT, RA;2;1219,50;P-7;x\n"
          "CL-1;03.11.2026;L8420;LT;-6;156,24;P-7;\n"
          "CL-2;04.11.2026;L5685;;1;-99;P-7;\n"
          ";;;;;1276,74;;\n"
          "CL-3;2026-11-04;L5685;;1;99;P-7;\n",
          ';');
  const auto table = MappedTable::open(sheet, by);
  REQUIRE(table);
  CHECK(table->ignored() == std::vector<std::string>{"Note"});
  std::vector<std::string> notes;
  const auto read = read_claim_table(*table, usd, notes);
  REQUIRE(read.rows.size() == 4);
  CHECK(notes.size() == 1);  // the line of sums
  const auto first = line_of(read.rows[0]);
  CHECK(first.charge == Money{121950, usd});
  CHECK(first.service_date == make_date(2026, 11, 3));
  CHECK(first.modifiers == std::vector<std::string>{"RT", "RA"});
  CHECK(first.side == Side::right);
  CHECK(read.rows[0].cells.at("payer") == "Northfield Health");
  CHECK(read.rows[0].person.patient_ref == "P-7");
  SUBCASE("below zero takes back: pieces above zero, charge below") {
    const auto by_quantity = line_of(read.rows[1]);
    CHECK(by_quantity.quantity == 6);
    CHECK(by_quantity.charge == Money{-15624, usd});
    CHECK(by_quantity.submission == Submission::reversal);
    const auto by_charge = line_of(read.rows[2]);
    CHECK(by_charge.quantity == 1);
    CHECK(by_charge.charge == Money{-9900, usd});
    CHECK(by_charge.takes_back());
  }
  SUBCASE("a date in another form is refused, not guessed") {
    REQUIRE(read.rows[3].fault);
    CHECK(read.rows[3].at == 6);
    CHECK(read.rows[3].fault->column == "service_date");
    CHECK(read.rows[3].cells.at("service_date") == "2026-11-04");
  }
  CHECK(read.stated == Money{121950 - 15624 - 9900 + 9900, usd});
}

TEST_CASE("thousands and currency signs are refused, not guessed") {
  const auto sheet =
      csv("No,Day,Code,Qty,Sum\nCL-1,2026-11-03,L5673,2,\"1,219.50\"\n"
          "CL-2,2026-11-03,L5673,2,$12\nCL-3,2026-11-03,L5673,1.5,12\n");
  const auto table = MappedTable::open(
      sheet,
      mapping(claims_target, "claim_ref=No;service_date=Day;code=Code;quantity=Qty;charge=Sum"));
  std::vector<std::string> notes;
  const auto read = read_claim_table(*table, usd, notes);
  REQUIRE(read.rows.size() == 3);
  CHECK(read.rows[0].fault->column == "charge");
  CHECK(read.rows[1].fault->column == "charge");
  CHECK(read.rows[2].fault->column == "quantity");
}

TEST_CASE("payments of a table balance line by line") {
  const auto sheet = csv(
      "payer,reference,paid_on,claim_ref,code,charge,paid,contractual,patient_share,adjustments\n"
      "Northfield Health,PAY-1,2026-11-20,CL-1,L5673,1000,700,200,100,\n"
      "Northfield Health,PAY-1,2026-11-20,CL-1,L8420,100,60,,,CO:45:30;PI:151:5\n"
      "Northfield Health,PAY-1,2026-11-20,CL-2,,,50,,,\n"
      "Northfield Health,PAY-2,2026-11-21,,,,-20,,,\n"
      "Northfield Health,PAY-1,2026-11-22,CL-3,L5673,1,1,,,\n"
      "Northfield Health,,2026-11-22,CL-3,L5673,1,1,,,\n"
      "Northfield Health,PAY-2,2026-11-21,CL-4,L5673,1,1,,,CO45\n");
  REQUIRE(has_own_headings(sheet, remittance_target));
  const auto table = MappedTable::open(sheet, propose_mapping(sheet, remittance_target));
  REQUIRE(table);
  std::vector<std::string> notes;
  const auto read = read_remittance_table(*table, usd, notes);
  REQUIRE(read.payments.size() == 2);
  const auto& lines = read.payments[0].lines;
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].line.adjustments ==
        std::vector<std::string>{"CO:45:200.00", "PR:unstated:100.00"});
  CHECK(lines[1].line.adjustments ==
        std::vector<std::string>{"CO:45:30.00", "PI:151:5.00", "OA:unstated:5.00"});
  CHECK(lines[2].line.entry == RemittanceEntry::claim);
  CHECK(lines[2].line.charge == Money{5000, usd});
  CHECK(read.payments[1].lines[0].line.entry == RemittanceEntry::provider);
  CHECK(read.payments[0].remittance.total == Money{81000, usd});
  for (const auto& payment : read.payments) {
    for (const auto& row : payment.lines) CHECK(left_open(row.line) == 0);
  }
  REQUIRE(read.refused.size() == 3);
  CHECK(read.refused[0].fault.column == "paid_on");
  CHECK(read.refused[1].fault.column == "reference");
  CHECK(read.refused[2].fault.column == "adjustments");
  const auto rejects = paid_rejects_text(read.refused);
  CHECK(rejects.find("CO45") != std::string::npos);
  CHECK(has_own_headings(csv(rejects), remittance_target));
}

}  // namespace claim_table_test
