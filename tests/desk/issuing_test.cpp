#include "desk/issuing.hpp"

#include <algorithm>
#include <filesystem>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "desk/issue_pieces.hpp"
#include "desk/proof_of_delivery.hpp"
#include "desk/substance_table.hpp"
#include "store/open.hpp"

namespace issuing_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);

std::unique_ptr<store::Store> made_store() {
  auto store = store::open_in_memory([] { return std::chrono::system_clock::time_point{}; });
  const auto work = store->begin_write({"anna", "example"});
  Item liner;
  liner.code = {"L1"};
  liner.description = "Locking liner";
  liner.attachment = Attachment::locking;
  liner.constituents = {"silicone elastomer"};
  liner.size_min_cm = 28;
  liner.size_max_cm = 30;
  liner.size_at_cm = 4;
  work->put(liner);
  work->put(Patient{{"P-1"}, "Ana", "Fieldmouse", std::nullopt, std::nullopt});
  work->put(Patient{{"P-2"}, "", "", std::nullopt, std::nullopt});
  Prosthesis prosthesis;
  prosthesis.patient = {"P-1"};
  prosthesis.delivered_on = today - days{10};
  work->put(prosthesis);
  work->put(Measurement{{"P-1"}, Side::left, today, 4, 29});
  const auto receive = [&](const std::string& lot, int in_days, int quantity,
                           const std::string& place) {
    work->record({{{"L1"}, lot, today + days{in_days}},
                  place,
                  MovementKind::receipt,
                  quantity,
                  today - days{60},
                  ""});
  };
  receive("OLD", -1, 3, "main store");
  receive("SOON", 30, 1, "main store");
  receive("LATE", 2000, 5, "main store");
  receive("HELD", 2000, 2, "quarantine");
  work->put(Reservation{{"P-1"}, {"L1"}, "main store", 3, std::nullopt});
  work->commit();
  return store;
}

IssueRequest request(int quantity = 1, const std::string& lot = "") {
  IssueRequest made;
  made.patient = "P-1";
  made.item = "L1";
  made.quantity = quantity;
  made.lot = lot;
  return made;
}

int on_hand(store::Store& store, const std::string& lot, const std::string& place) {
  for (const auto& level : store.read()->shelf()) {
    if (level.lot.lot == lot && level.place == place) return level.quantity;
  }
  return 0;
}

bool found(const IssueCheck& check, const std::string& key) {
  return std::ranges::find(check.findings, key, &IssueFinding::key) != check.findings.end();
}

UnitEnding ending_of(const std::string& lot) {
  UnitEnding made;
  made.unit.patient = "P-1";
  made.unit.lot = lot;
  made.reason = EndReason::returned;
  made.on = today;
  made.back_to_shelf = true;
  return made;
}

}  // namespace

TEST_CASE("An issue books units, movements and the reservation together, first expiry first") {
  const auto store = made_store();
  const auto outcome = issue_part(*store, request(2), today, today, "anna");
  REQUIRE(outcome);
  REQUIRE(outcome->recorded);
  REQUIRE(outcome->units.size() == 2);
  CHECK(outcome->units[0].lot == "SOON");
  CHECK(outcome->units[1].lot == "LATE");
  CHECK_FALSE(outcome->units[0].share);
  CHECK(on_hand(*store, "SOON", "main store") == 0);
  CHECK(on_hand(*store, "LATE", "main store") == 4);
  const auto read = store->read();
  CHECK(read->all<Unit>().size() == 2);
  CHECK(read->all<Handover>().size() == 2);
  CHECK(read->all<Reservation>()[0].record.quantity == 1);
  CHECK(read->movements().back().kind == MovementKind::issue);
  CHECK(found(outcome->check, "nothing_recorded"));
  CHECK(found(outcome->check, "short_dated"));
  CHECK(found(outcome->check, "chain_incomplete"));
  CHECK(found(outcome->check, "size_fits"));
}

TEST_CASE("Alike units of one day are told apart by their copy") {
  const auto store = made_store();
  REQUIRE(issue_part(*store, request(2, "LATE"), today, today, "anna")->recorded);
  const auto more = issue_part(*store, request(1, "LATE"), today, today, "anna");
  REQUIRE(more->recorded);
  CHECK(more->units[0].copy == 3);
}

TEST_CASE("A stop needs a named clinician with a reason, and both are recorded") {
  const auto store = made_store();
  for (const auto* lot : {"OLD", "HELD"}) {
    CAPTURE(lot);
    auto asked = request(1, lot);
    const auto stopped = issue_part(*store, asked, today, today, "anna");
    REQUIRE(stopped);
    CHECK_FALSE(stopped->recorded);
    CHECK(stopped->check.stops());
    asked.override_by = "B. Clinician";
    CHECK_FALSE(issue_part(*store, asked, today, today, "anna"));
    asked.override_because = "fitting on trial in the clinic";
    const auto decided = issue_part(*store, asked, today, today, "anna");
    REQUIRE(decided);
    CHECK(decided->recorded);
    const auto handover = store->read()->all<Handover>().back().record;
    CHECK(handover.override_by == "B. Clinician");
    CHECK(handover.override_because == "fitting on trial in the clinic");
    CHECK_FALSE(handover.overridden.empty());
    CHECK(store->read()->changes(1)[0].why.find("B. Clinician") != std::string::npos);
  }
}

TEST_CASE("Never more than is there, by nobody's decision") {
  const auto store = made_store();
  auto asked = request(7);
  asked.override_by = "B. Clinician";
  asked.override_because = "urgent";
  const auto outcome = issue_part(*store, asked, today, today, "anna");
  REQUIRE(outcome);
  CHECK_FALSE(outcome->recorded);
  CHECK(found(outcome->check, "not_on_shelf"));
  CHECK(outcome->check.cannot_be_done());
  CHECK(store->read()->all<Unit>().empty());
}

TEST_CASE("What is promised to others is asked about, and wrong questions are refused") {
  const auto store = made_store();
  auto asked = request(4);
  asked.patient = "P-2";
  const auto outcome = issue_part(*store, asked, today, today, "anna");
  REQUIRE(outcome);
  CHECK(found(outcome->check, "promised"));
  CHECK(found(outcome->check, "no_prosthesis"));
  CHECK(store->read()->all<Reservation>()[0].record.quantity == 3);
  CHECK_FALSE(issue_part(*store, request(1), today + days{1}, today, "anna"));
  asked.patient = "P-9";
  CHECK_FALSE(issue_part(*store, asked, today, today, "anna"));
}

TEST_CASE("What is booked so far ahead that it can be ordered in time is not asked about") {
  auto clinic = store::load_clinic(*made_store()->read());
  desk::IssueQuestion question;
  question.patient = {"P-2"};
  question.item = {"L1"};
  question.quantity = 4;
  question.day = today;
  const auto asked = [&](std::optional<Date> needed_on) {
    clinic.reservations.at(0).needed_on = needed_on;
    return std::ranges::any_of(pieces_for(clinic, question).findings,
                               [](const auto& finding) { return finding.key == "promised"; });
  };
  CHECK(asked(std::nullopt));
  CHECK(asked(today + days{7}));
  CHECK_FALSE(asked(today + days{200}));
}

TEST_CASE("Opened parts come back to quarantine, unopened ones to the shelf with their lot") {
  const auto store = made_store();
  REQUIRE(issue_part(*store, request(2, "LATE"), today, today, "anna")->recorded);
  auto ending = ending_of("LATE");
  REQUIRE(end_unit(*store, ending, today, "anna"));
  CHECK(on_hand(*store, "LATE", "quarantine") == 1);
  ending.unopened = true;
  const auto sealed = end_unit(*store, ending, today, "anna");
  REQUIRE(sealed);
  CHECK(sealed->movement->lot.use_by == today + days{2000});
  CHECK(on_hand(*store, "LATE", "main store") == 4);
  CHECK_FALSE(end_unit(*store, ending, today, "anna"));  // none is left in use
}

TEST_CASE("A mistaken issue is reversed by a movement, and its unit ends on its day") {
  const auto store = made_store();
  REQUIRE(issue_part(*store, request(1, "LATE"), today - days{3}, today, "anna")->recorded);
  auto ending = ending_of("");
  ending.mistake = true;
  const auto ended = end_unit(*store, ending, today, "anna");
  REQUIRE(ended);
  CHECK(ended->unit.end_reason == EndReason::returned);
  CHECK(ended->unit.ended_on == today - days{3});
  CHECK(on_hand(*store, "LATE", "main store") == 5);
  CHECK_FALSE(mark_delivered(*store, {"P-1", {}, "", "", ""}, {}, today, today, "anna"));
}

TEST_CASE("Endings that contradict themselves are refused and change nothing") {
  const auto store = made_store();
  REQUIRE(issue_part(*store, request(1, "LATE"), today, today, "anna")->recorded);
  auto ending = ending_of("LATE");
  ending.reason = EndReason::lost;
  CHECK_FALSE(end_unit(*store, ending, today, "anna"));
  ending.reason = EndReason::hole;
  ending.unopened = true;
  CHECK_FALSE(end_unit(*store, ending, today, "anna"));
  ending.unopened = false;
  ending.on = today + days{1};
  CHECK_FALSE(end_unit(*store, ending, today, "anna"));
  ending.on = today - days{1};
  CHECK_FALSE(end_unit(*store, ending, today, "anna"));
  CHECK_FALSE(store->read()->all<Unit>()[0].record.ended_on);
}

TEST_CASE("The delivery sheet counts alike units in one line, and signing is recorded once") {
  const auto store = made_store();
  const auto outcome = issue_part(*store, request(2, "LATE"), today, today, "anna");
  REQUIRE(outcome->recorded);
  const auto clinic = store::load_clinic(*store->read());
  const auto sheet = delivery_sheet(clinic, outcome->units, today, {});
  REQUIRE(sheet.lines.size() == 1);
  CHECK(sheet.lines[0].quantity == 2);
  CHECK(sheet.patient_name == "Ana Fieldmouse");
  CHECK(delivery_sheet(clinic, outcome->units, today, {.names = false}).patient_name.empty());
  const UnitChoice choice{"P-1", {}, "", "", ""};
  CHECK_FALSE(mark_delivered(*store, choice, {}, today + days{1}, today, "anna"));
  const auto marked = mark_delivered(*store, choice, {}, today, today, "anna");
  REQUIRE(marked);
  CHECK(marked->size() == 2);
  CHECK(store->read()->all<Handover>()[0].record.signed_on == today);
  CHECK_FALSE(mark_delivered(*store, choice, {}, today, today, "anna"));
}

TEST_CASE(
    "Parts that were handed over earlier are chosen by number, and a second sheet is a copy") {
  const auto store = made_store();
  REQUIRE(issue_part(*store, request(1, "SOON"), today - days{9}, today, "anna")->recorded);
  REQUIRE(issue_part(*store, request(2, "LATE"), today, today, "anna")->recorded);
  UnitChoice choice;
  choice.patient = "P-1";
  const auto parts = issued_parts(*store->read(), choice);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].units.size() == 2);
  CHECK(issued_words(parts[0]) == "left L1 (lot LATE), issued 25 Nov 2026, 2 pieces");
  const auto file = (std::filesystem::temp_directory_path() / "sparewell-sheet-again.pdf").string();
  const auto again = print_sheet_again(*store, choice, {}, file, today, {}, "anna");
  REQUIRE_FALSE(again);
  CHECK(again.error().sentence.find("25 Nov 2026 and 16 Nov 2026") != std::string::npos);
  CHECK_FALSE(print_sheet_again(*store, choice, {3}, file, today, {}, "anna"));
  REQUIRE(print_sheet_again(*store, choice, {2}, file, today, {}, "anna"));
  CHECK(issued_parts(*store->read(), choice)[1].printed_on == today);
  const auto marked = mark_delivered(*store, choice, {1}, today, today, "anna");
  REQUIRE(marked);
  CHECK(marked->size() == 2);
  const auto open = unsigned_parts(*store->read(), choice);
  REQUIRE(open.size() == 1);
  CHECK(open[0].units[0].lot == "SOON");
  std::filesystem::remove(file);
}

TEST_CASE("A part's expected wear is that of the patient where a fit is at hand") {
  const auto store = made_store();
  // The patient wore three liners out in twenty days each, far below the usual life.
  {
    const auto work = store->begin_write({"anna", "example"});
    for (int i = 0; i < 3; ++i) {
      Unit unit;
      unit.patient = {"P-1"};
      unit.item = {"L1"};
      unit.serial = fmt::format("W{}", i);
      unit.issued_on = today - days{80 - 20 * i};
      unit.ended_on = unit.issued_on + days{20};
      unit.end_reason = EndReason::hole;
      work->put(unit);
    }
    work->commit();
  }
  const auto assessed = forecast(store::load_clinic(*store->read()), built_in_priors(), today);
  IssueQuestion question;
  question.patient = {"P-1"};
  question.item = {"L1"};
  question.day = today;
  const auto own = expected_days(assessed, question);
  question.patient = {"P-2"};
  const auto other = expected_days(assessed, question);
  REQUIRE(own);
  REQUIRE(other);
  CHECK(*own < *other);
  question.item = {"nothing"};
  CHECK_FALSE(expected_days(assessed, question));
  const auto outcome = issue_part(*store, request(1, "SOON"), today, today, "anna",
                                  [](const IssueQuestion&) { return std::optional{45}; });
  REQUIRE(outcome);
  const auto short_dated =
      std::ranges::find(outcome->check.findings, "short_dated", &IssueFinding::key);
  REQUIRE(short_dated != outcome->check.findings.end());
  CHECK(short_dated->words.find("with this patient, by the forecast") != std::string::npos);
}

TEST_CASE("The built-in substances know what design and sample clinic name") {
  const auto& substances = built_in_substances().substances;
  CHECK(substances.path("Mineral oil", "petrolatum-type hydrocarbons").at(0).certain());
  CHECK(substances.path("TMTD", "rubber accelerators").at(0).certain());
  CHECK_FALSE(substances.path("neoprene", "rubber accelerators").at(0).certain());
  for (const auto* name : {"silicone elastomer", "platinum catalyst", "polyamide fabric",
                           "titanium", "styrenic block copolymer", "cotton", "elastane",
                           "fragrance", "lanolin", "stainless steel", "polyamide cord"}) {
    CAPTURE(name);
    CHECK(substances.knows(name));
  }
}

}  // namespace issuing_test
