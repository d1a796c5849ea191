#include "desk/patient_history.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "desk/patient_paper_rows.hpp"
#include "desk/patient_travel.hpp"
#include "desk/sample_day.hpp"

namespace patient_history_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const PatientRef patient{"P-1"};

/// One record of every sort for P-1, and one of each that is another's.
Assessment full_life() {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  const Date day = test_today - days{7};
  for (const PatientRef& of : {patient, PatientRef{"P-2"}}) {
    clinic.prostheses.push_back({of, Side::left, Level::transtibial, Suspension::pin,
                                 Stage::definitive, test_today - days{300}, std::nullopt});
    clinic.measurements.push_back({of, Side::left, day, 4, 28.4});
    clinic.usage.push_back({of, day, Activity::k3, {}, {}, {}, {}});
    clinic.sensitivities.push_back({of, "moss oil", "itching", "", std::nullopt});
    clinic.reactions.push_back({of, Side::left, day, test_today, {"redness"}, ""});
    clinic.reservations.push_back({of, {"A-28"}, "main store", 1, test_today + days{20}});
    Loan loan;
    loan.number = 7;
    loan.patient = of;
    loan.lot = {{"A-28"}, "L9", std::nullopt};
    loan.quantity = 2;
    loan.lent_on = day;
    loan.due_on = test_today - days{1};
    clinic.loans.push_back(loan);
    ClaimLine claim;
    claim.claim_ref = "C-1";
    claim.patient = of;
    claim.service_date = day;
    claim.code = "L0000";
    claim.quantity = 1;
    clinic.claim_lines.push_back(claim);
    OrderPiece piece;
    piece.order_ref = "O-1";
    piece.item = {"A-28"};
    piece.patient = of;
    clinic.order_pieces.push_back(piece);
  }
  PartPaper paper;
  paper.patient = patient;
  paper.side = Side::right;
  paper.item = {"A-28"};
  paper.lot = "LOT-S1";
  paper.serial = "S1";
  paper.issued_on = test_today - days{100};
  paper.paper = "order";
  paper.dated_on = day;
  clinic.part_papers = {paper};
  Handover handover = handover_of(clinic.units[0]);
  handover.signed_on = day;
  clinic.handovers = {handover};
  return assessment;
}

}  // namespace

TEST_CASE("The history holds every sort of record of the patient alone, the newest first") {
  const Day day{full_life()};
  const auto history = patient_history(day, patient);
  for (std::size_t i = 0; i + 1 < history_kinds().size(); ++i) {
    CAPTURE(i);
    CHECK(std::ranges::any_of(
        history, [&](const HistoryEntry& each) { return each.kind == static_cast<Happening>(i); }));
  }
  // 3 units issued, 1 ended, a prosthesis, a measurement, use, a sensitivity, a reaction and its
  // end, a booking and the next visit, a loan, a claim, an order, a paper and a signature.
  CHECK(history.size() == 17);
  CHECK(std::ranges::is_sorted(history, std::ranges::greater{}, &HistoryEntry::day));
  CHECK(history.front().day == test_today + days{20});
  CHECK_FALSE(history.back().day);
}

TEST_CASE("One kind alone can be asked for, and words are found") {
  const Day day{full_life()};
  Table table{history_columns()};
  table.fill(history_rows(patient_history(day, patient)));
  CHECK(history_count(table) == "17 entries");
  table.require(history_marks(2));
  REQUIRE(table.size() == 1);
  CHECK(table.at(0).cells[3].text.find("reason: hole") != std::string::npos);
  table.require(history_marks(0));
  table.find("Moss OIL");
  REQUIRE(table.size() == 1);
  CHECK(table.at(0).cells[0].text == "not recorded");
  CHECK(history_count(table) == "1 of 17 entries");
}

TEST_CASE("Papers say what is noted, what is not, and where the proof of delivery is missing") {
  const Day day{full_life()};
  const auto rows = paper_rows(day, patient);
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].id == "0");  // issued last
  CHECK(rows[0].cells[3].text.starts_with("order of "));
  CHECK(rows[0].cells[4].text.find("order") == std::string::npos);
  CHECK(rows[0].cells[6].text.starts_with("signed "));
  CHECK(rows[1].cells[3].text == "none");
  CHECK(rows[1].cells[6].text == "no signed sheet");
  CHECK(papers_summary(day, patient).starts_with("2 parts have no signed delivery sheet"));
}

TEST_CASE("What is lent is listed with what is still out, and the look at a trip says what it is") {
  const Day day{full_life()};
  const auto rows = lent_rows(day, patient);
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].cells[6].text == "2 still out, overdue");
  CHECK(rows[0].strong);
  const Day known{forecast(full_life().clinic, built_in_priors(), test_today)};
  const auto outlook = travel_outlook(known, patient);
  CHECK(outlook.starts_with("An example: away from 26 Nov 2026"));
  CHECK(outlook.find("Left, locking liner: Lasts with") != std::string::npos);
}

}  // namespace patient_history_test
