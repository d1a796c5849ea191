#include "desk/visit_booking.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "desk/booking_rows.hpp"
#include "desk/issuing.hpp"
#include "desk/moved_visits.hpp"
#include "desk/unit_ending.hpp"
#include "store/open.hpp"

namespace visit_booking_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);
const Date visit = today + days{8};

/// P-1 with a prosthesis left and a visit, P-2 with both sides and none, P-3 sensitive to mineral
/// oil; L1 a liner that fits P-1, G1 a gel sleeve that declares mineral oil.
std::unique_ptr<store::Store> made_store() {
  auto store = store::open_in_memory([] { return std::chrono::system_clock::time_point{}; });
  const auto work = store->begin_write({"anna", "example"});
  Item liner;
  liner.code = {"L1"};
  liner.description = "Locking liner";
  liner.attachment = Attachment::locking;
  work->put(liner);
  Item gel;
  gel.code = {"G1"};
  gel.kind = Kind::sleeve;
  gel.constituents = {"mineral oil"};
  work->put(gel);
  work->put(Patient{{"P-1"}, "Ana", "Fieldmouse", std::nullopt, visit});
  work->put(Patient{{"P-2"}, "", "", std::nullopt, std::nullopt});
  work->put(Patient{{"P-3"}, "", "", std::nullopt, today - days{1}});
  work->put(Sensitivity{{"P-3"}, "mineral oil", "rash", "patch test", today});
  const auto wears = [&](const char* patient, Side side) {
    Prosthesis prosthesis;
    prosthesis.patient = {patient};
    prosthesis.side = side;
    prosthesis.delivered_on = today - days{10};
    work->put(prosthesis);
  };
  wears("P-1", Side::left);
  wears("P-2", Side::left);
  wears("P-2", Side::right);
  wears("P-3", Side::right);
  work->record({{{"L1"}, "A17", std::nullopt},
                "main store",
                MovementKind::receipt,
                1,
                today - days{60},
                ""});
  work->commit();
  return store;
}

BookingRequest request(const std::string& patient, const std::string& item = "L1") {
  BookingRequest made;
  made.patient = patient;
  made.item = item;
  return made;
}

std::vector<Reservation> bookings(store::Store& store) {
  std::vector<Reservation> made;
  for (auto& row : store.read()->all<Reservation>()) made.push_back(std::move(row.record));
  return made;
}

std::string refusal(store::Store& store, const BookingRequest& asked) {
  const auto outcome = book_pieces(store, asked, today, "anna");
  return outcome ? "" : outcome.error().sentence;
}

Expected<CancelledBooking> cancel(store::Store& store, const BookingChoice& choice) {
  return [&] {
    const auto work = store.begin_write({"anna", "no visit"});
    auto cancelled = cancel_booking(*work, choice);
    if (cancelled) work->commit();
    return cancelled;
  }();
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A booking is for the next visit unless a day is named, and adds up") {
  const auto store = made_store();
  const auto outcome = book_pieces(*store, request("P-1"), today, "anna");
  REQUIRE_MESSAGE(outcome, (outcome ? "" : outcome.error().sentence));
  REQUIRE(outcome->recorded);
  CHECK(outcome->booking == Reservation{{"P-1"}, {"L1"}, "main store", 1, visit});
  CHECK(outcome->check.question.side == Side::left);
  auto more = request("P-1");
  more.quantity = 2;
  CHECK(book_pieces(*store, more, today, "anna")->booking.quantity == 3);
  more.on = today;
  CHECK(book_pieces(*store, more, today, "anna")->booking.quantity == 2);
  CHECK(bookings(*store).size() == 2);
  CHECK(store->read()->changes(1).front().why == "booking of L1 for P-1");
  CHECK(store->read()->changes(1).front().who == "anna");
}

TEST_CASE("What cannot be booked is refused with what to do") {
  const auto store = made_store();
  CHECK(holds(refusal(*store, request("P-9")), "no patient 'P-9'"));
  CHECK(holds(refusal(*store, request("P-1", "L9")), "no item 'L9'"));
  CHECK(refusal(*store, request("P-2")) ==
        "No next visit of P-2 is recorded; say the day on which it is needed.");
  CHECK(holds(refusal(*store, request("P-3")), "2026-11-24, has passed"));
  auto asked = request("P-1");
  asked.on = today - days{1};
  CHECK(refusal(*store, asked) == "2026-11-24 has passed; book for today or a later day.");
  asked = request("P-2");
  asked.on = visit;
  CHECK(holds(refusal(*store, asked), "prostheses on both sides"));
  asked.side = Side::right;
  CHECK(refusal(*store, asked).empty());
  asked.place = "nowhere";
  CHECK(refusal(*store, asked) == "'nowhere' is no store of the clinic; these are: main store.");
  asked = request("P-1");
  asked.quantity = 0;
  CHECK(holds(refusal(*store, asked), "At least one"));
}

TEST_CASE("A conflict stops a booking until a clinician decides") {
  const auto store = made_store();
  auto asked = request("P-3", "G1");
  asked.on = visit;
  const auto stopped = book_pieces(*store, asked, today, "anna");
  REQUIRE(stopped);
  CHECK(stopped->check.stops());
  CHECK_FALSE(stopped->recorded);
  CHECK(bookings(*store).empty());
  asked.override_by = "B. Clinician";
  CHECK(holds(refusal(*store, asked), "both"));
  asked.override_because = "worn over a sock";
  CHECK(book_pieces(*store, asked, today, "anna")->recorded);
  CHECK(holds(store->read()->changes(1).front().why, "decided by B. Clinician: worn over a sock"));
}

TEST_CASE("A booking is cancelled, whole or in part, and the right one of several") {
  const auto store = made_store();
  auto asked = request("P-1");
  asked.quantity = 3;
  REQUIRE(book_pieces(*store, asked, today, "anna"));
  BookingChoice choice;
  choice.patient = "P-1";
  choice.item = "L1";
  choice.quantity = 4;
  CHECK(holds(cancel(*store, choice).error().sentence, "Only 3 pieces are booked"));
  choice.quantity = 1;
  const auto one = cancel(*store, choice);
  REQUIRE(one);
  CHECK(cancelled_words(*one) ==
        "1 piece of L1 for 3 Dec 2026 at main store is no longer booked for P-1; 2 pieces still "
        "are.");
  asked.on = today;
  REQUIRE(book_pieces(*store, asked, today, "anna"));
  choice.quantity = 0;
  CHECK(holds(cancel(*store, choice).error().sentence, "Several bookings"));
  choice.on = visit;
  REQUIRE(cancel(*store, choice));
  CHECK(bookings(*store)[0].quantity == 0);
  CHECK(bookings(*store)[1].quantity == 3);
  CHECK(holds(cancel(*store, choice).error().sentence, "No such piece"));
  choice.patient = "P-9";
  CHECK(holds(cancel(*store, choice).error().sentence, "no patient"));
}

TEST_CASE("Handing the part over uses the booking up, and reversing a mistaken issue restores it") {
  const auto store = made_store();
  REQUIRE(book_pieces(*store, request("P-1"), today, "anna")->recorded);
  IssueRequest issue;
  issue.patient = "P-1";
  issue.item = "L1";
  REQUIRE(issue_part(*store, issue, today, today, "anna")->recorded);
  CHECK(bookings(*store)[0].quantity == 0);
  UnitEnding ending;
  ending.unit.patient = "P-1";
  SUBCASE("a part that comes back was needed") {
    ending.reason = EndReason::returned;
    ending.on = today;
    ending.back_to_shelf = true;
    REQUIRE(end_unit(*store, ending, today, "anna"));
    CHECK(bookings(*store)[0].quantity == 0);
  }
  SUBCASE("a mistake") {
    ending.mistake = true;
    REQUIRE(end_unit(*store, ending, today, "anna"));
    REQUIRE(bookings(*store).size() == 1);
    CHECK(bookings(*store)[0] == Reservation{{"P-1"}, {"L1"}, "main store", 1, visit});
    // And once more, with a second piece that nobody booked.
    REQUIRE(issue_part(*store, issue, today, today, "anna")->recorded);
    CHECK(bookings(*store)[0].quantity == 0);
  }
}

TEST_CASE("An issue that used no booking gives none back") {
  const auto store = made_store();
  IssueRequest issue;
  issue.patient = "P-1";
  issue.item = "L1";
  REQUIRE(issue_part(*store, issue, today, today, "anna")->recorded);
  UnitEnding ending;
  ending.unit.patient = "P-1";
  ending.mistake = true;
  REQUIRE(end_unit(*store, ending, today, "anna"));
  CHECK(bookings(*store).empty());
}

TEST_CASE("The list says where the pieces come from") {
  Reservation booking{{"P-1"}, {"L1"}, "main store", 3, visit};
  supply::Serving serving{&booking, 3, 0, 0, 0, 0, std::nullopt};
  CHECK(booking_words(booking) == "3 pieces of L1 for 3 Dec 2026 at main store");
  CHECK(serving_words(serving, today) == "in stock");
  CHECK(serving_key(serving) == "served");
  serving = {&booking, 1, 1, 1, 0, 0, today + days{2}, "branch"};
  CHECK(serving_words(serving, today) ==
        "1 in stock, 1 in stock at branch, 1 on order, expected 27 Nov 2026");
  serving = {&booking, 0, 0, 0, 2, 1, today + days{20}};
  CHECK(serving_words(serving, today) ==
        "2 on order, expected 15 Dec 2026, which is too late, 1 neither in stock nor on order");
  CHECK(serving_key(serving) == "missing");
  serving = {&booking, 0, 0, 3, 0, 0, std::nullopt};
  CHECK(serving_words(serving, visit + days{1}) == "the day has passed; in transit");
  booking.needed_on.reset();
  CHECK(booking_words(booking) == "3 pieces of L1 without a day at main store");
}

TEST_CASE("Bookings go along when a visit is moved, and are told of when it is dropped") {
  const auto store = made_store();
  BookingRequest asked;
  asked.patient = "P-1";
  asked.item = "L1";
  asked.quantity = 2;
  REQUIRE(book_pieces(*store, asked, today, "anna"));
  asked.on = visit + days{7};  // for another day: stays
  REQUIRE(book_pieces(*store, asked, today, "anna"));
  const auto moved_to = [&](std::optional<Date> day) {
    const auto work = store->begin_write({"anna", "example"});
    const auto booked = booked_for_visits(*work);
    auto patient = *work->patient({"P-1"});
    patient.record.next_visit = day;
    work->put_instead(patient.id, patient.record);
    auto told = follow_visits(*work, booked, today);
    work->commit();
    return told;
  };
  const auto booked_on = [&](Date day) {
    int pieces = 0;
    for (const auto& row : store->read()->all<Reservation>()) {
      if (row.record.needed_on == day) pieces += row.record.quantity;
    }
    return pieces;
  };
  CHECK(moved_to(visit).empty());
  const auto told = moved_to(visit + days{2});
  REQUIRE(told.size() == 1);
  CHECK(told[0] ==
        "P-1: 2 pieces of L1 for 3 Dec 2026 at main store: booked for 5 Dec 2026 now, the new "
        "day of the visit.");
  CHECK(booked_on(visit) == 0);
  CHECK(booked_on(visit + days{2}) == 2);
  CHECK(moved_to(visit + days{7}).size() == 1);  // joins what is booked for that day
  CHECK(booked_on(visit + days{7}) == 4);
  const auto dropped = moved_to(std::nullopt);
  REQUIRE(dropped.size() == 1);
  CHECK(dropped[0].find("that visit is no longer recorded") != std::string::npos);
  CHECK(booked_on(visit + days{7}) == 4);
}

}  // namespace visit_booking_test
