#include "desk/undo.hpp"

#include <doctest/doctest.h>

#include "desk/visit_booking.hpp"
#include "store/open.hpp"

namespace undo_test {

using namespace sparewell;
using namespace sparewell::desk;

// What holds after an undo is compared with what held before; the ledger only grows.
namespace {

const Date today = make_date(2026, 11, 25);

std::unique_ptr<store::Store> made_store() {
  auto store = store::open_in_memory([] { return std::chrono::system_clock::time_point{}; });
  const auto work = store->begin_write({"anna", "example"});
  Item sock;
  sock.code = {"S1"};
  sock.description = "Sock";
  sock.kind = Kind::sock;
  work->put(sock);
  work->put(Patient{{"P-1"}, "Ana", "Fieldmouse", std::nullopt, std::nullopt});
  Prosthesis prosthesis;
  prosthesis.patient = {"P-1"};
  prosthesis.delivered_on = today - days{10};
  work->put(prosthesis);
  work->record(
      {{{"S1"}, "A", std::nullopt}, "main store", MovementKind::receipt, 5, today - days{60}, ""});
  work->put(Reservation{{"P-1"}, {"S1"}, "main store", 1, today});
  work->commit();
  return store;
}

std::vector<Unit> issued(store::Store& store, int pieces) {
  IssueRequest request;
  request.patient = "P-1";
  request.item = "S1";
  request.quantity = pieces;
  request.override_by = "R. Example";
  request.override_because = "example";
  const auto outcome = issue_part(store, request, today, today, "anna");
  REQUIRE(outcome);
  REQUIRE(outcome->recorded);
  return outcome->units;
}

int in_use(store::Store& store) {
  int count = 0;
  for (const auto& row : store.read()->all<Unit>()) count += row.record.in_use_on(today) ? 1 : 0;
  return count;
}

int on_shelf(store::Store& store) {
  int pieces = 0;
  for (const auto& level : store.read()->shelf()) {
    if (level.place == "main store") pieces += level.quantity;
  }
  return pieces;
}

int booked(store::Store& store) {
  int pieces = 0;
  for (const auto& booking : bookings_now(*store.read())) pieces += booking.quantity;
  return pieces;
}

}  // namespace

TEST_CASE("An undone issue puts pieces and the booking that they used up back") {
  const auto store = made_store();
  UndoList list;
  list.did(undo_issue(issued(*store, 2)));
  CHECK(on_shelf(*store) == 3);
  CHECK(booked(*store) == 0);
  CHECK(list.label() == "Undo issue of S1 to P-1");
  CHECK(list.undo(*store, today, "anna"));
  CHECK(on_shelf(*store) == 5);
  CHECK(in_use(*store) == 0);
  CHECK(booked(*store) == 1);
  // Receipt, two issues, two reversals: nothing is deleted.
  CHECK(store->read()->movements().size() >= 3);
  CHECK_FALSE(list.anything());
}

TEST_CASE("An undone ending puts the part in use again, and takes a piece that came back off") {
  const auto store = made_store();
  const auto unit = issued(*store, 1).front();
  UnitEnding ending;
  ending.unit = {"P-1", std::nullopt, "S1", "A", "", std::nullopt};
  ending.reason = EndReason::returned;
  ending.on = today;
  ending.back_to_shelf = true;
  ending.unopened = true;
  const auto ended = end_unit(*store, ending, today, "anna");
  REQUIRE(ended);
  CHECK(on_shelf(*store) == 5);
  UndoList list;
  auto step = undo_ending(ending, *ended);
  REQUIRE(step);
  list.did(*step);
  CHECK(list.undo(*store, today, "anna"));
  CHECK(in_use(*store) == 1);
  CHECK(on_shelf(*store) == 4);
  CHECK(store->read()->all<Unit>().front().record == unit);
}

TEST_CASE("What was changed since is not undone, and stays on the list") {
  const auto store = made_store();
  UndoList list;
  list.did(undo_issue(issued(*store, 1)));
  UnitEnding ending;
  ending.unit.patient = "P-1";
  ending.reason = EndReason::hole;
  ending.on = today;
  REQUIRE(end_unit(*store, ending, today, "ben"));
  const auto refused = list.undo(*store, today, "anna");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().sentence.find("changed since") != std::string::npos);
  CHECK(list.can_undo());
}

TEST_CASE("A stock movement is undone by opposite movements, once") {
  const auto store = made_store();
  const auto written = in_one_work(*store, {"anna", "example"}, [](store::UnitOfWork& work) {
    return book_write_off(work, {{"S1"}, "A", std::nullopt, "main store", 2},
                          supply::WriteOff::damaged, today, "wet");
  });
  REQUIRE(written);
  CHECK(on_shelf(*store) == 3);
  auto step = undo_movements(*store->read(), *written);
  REQUIRE(step);
  UndoList list;
  list.did(*step);
  list.did(*step);
  CHECK(list.undo(*store, today, "anna"));
  CHECK(on_shelf(*store) == 5);
  CHECK_FALSE(list.undo(*store, today, "anna"));
}

TEST_CASE("Bookings that were made or cancelled are as before") {
  const auto store = made_store();
  const auto before = bookings_now(*store->read());
  {
    const auto work = store->begin_write({"anna", "example"});
    REQUIRE(cancel_booking(*work, {"P-1", "S1", today, false, "main store", 0}));
    work->commit();
  }
  CHECK(booked(*store) == 0);
  const auto cancelled = bookings_now(*store->read());
  auto step = undo_bookings(before, cancelled);
  REQUIRE(step);
  CHECK(step->take_back(*store, today, "anna"));
  CHECK(booked(*store) == 1);
  auto made = undo_bookings(cancelled, bookings_now(*store->read()));
  REQUIRE(made);
  CHECK(made->take_back(*store, today, "anna"));
  CHECK(booked(*store) == 0);
  CHECK_FALSE(undo_bookings(before, before));
}

TEST_CASE("An answer to a finding is undone by the answer before it, or by opening it again") {
  const auto store = made_store();
  const auto answer = [&](int number, Answer given) {
    BillingAnswer made;
    made.finding = "F";
    made.number = number;
    made.answer = given;
    made.reason = "example";
    made.answered_by = "anna";
    made.answered_on = today;
    const auto work = store->begin_write({"anna", "example"});
    work->put(made);
    work->commit();
  };
  const auto newest = [&] { return store->read()->all<BillingAnswer>().back().record; };
  answer(1, Answer::accepted);
  auto first = undo_answer(*store->read(), "F");
  REQUIRE(first);
  CHECK(first->take_back(*store, today, "anna"));
  CHECK(newest().answer == Answer::open_again);
  answer(3, Answer::accepted);
  answer(4, Answer::written_off);
  CHECK(undo_answer(*store->read(), "F")->take_back(*store, today, "anna"));
  CHECK(newest().answer == Answer::accepted);
  CHECK(newest().number == 5);
  CHECK_FALSE(undo_answer(*store->read(), "none"));
}

TEST_CASE("What cannot be undone says so, and shields what went before it") {
  const auto store = made_store();
  UndoList list;
  CHECK_FALSE(list.anything());
  list.did(undo_issue(issued(*store, 1)));
  list.did_for_good("an order was changed");
  const auto refused = list.undo(*store, today, "anna");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().sentence ==
        "This cannot be undone: an order was changed. It stays on record.");
  CHECK(in_use(*store) == 1);
}

}  // namespace undo_test
