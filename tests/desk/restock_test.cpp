// Moves between branches: their words, sending them, and the branch that a patient belongs to.
#include "desk/restock.hpp"

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/patient_card.hpp"
#include "desk/patient_place.hpp"
#include "desk/restock_rows.hpp"
#include "desk/restock_words.hpp"

namespace restock_test {

using namespace sparewell;
using namespace sparewell::desk;
using namespace sparewell::test;

namespace {

const Lot lot_eight{{"LN-1"}, "L8", make_date(2027, 1, 31)};

supply::RestockMove two_to_north() {
  supply::RestockMove move;
  move.item = {"LN-1"};
  move.quantity = 2;
  move.lots = {{lot_eight, "main store", 2}};
  move.transit_days = 1;
  move.from = {"main store", make_date(2026, 12, 3), 3, 0, 1, 0.3, 0.02, 0.04};
  move.to = {"North", make_date(2026, 12, 3), 0, 1, 0, 1.4, 0.41, 0.05};
  move.needs = {{{"P1"}, Side::left, 0, 0.35, 0, {}, {}, {}},
                {{"P2"}, Side::right, 1, 0.004, 0, {}, {}, {}}};
  move.more_needs = 1;
  move.for_new_patients = 0.2;
  move.missing_before = 0.9;
  move.missing_after = 0.25;
  return move;
}

RestockPlan plan_of(std::vector<supply::RestockMove> moves) {
  return {7, {{"main store", 1, 0}, {"North", 1, 0}}, std::move(moves)};
}

struct Branch {
  Branch() {
    write_full_folder(folder);
    folder.write("patients.csv", "patient_ref,given_name,place\nP1,Ada,North\nP2,,\n");
    folder.write("stock.csv",
                 "item_code,lot,use_by,quantity,place\nLN-1,L8,2027-01-31,3,main store\n");
    import(*store, folder.path());
  }
  [[nodiscard]] DayPtr day(RestockPlan plan = {}) const {
    Assessment assessment;
    assessment.today = import_day();
    assessment.clinic = store::load_clinic(*store->read());
    return std::make_shared<const Day>(std::move(assessment), wear::Surprises{}, std::move(plan));
  }
  template <class Book>
  Expected<Booked> book(const Book& book) const {
    return in_one_work(*store, {"tester", "a test"}, book);
  }
  [[nodiscard]] int at(const std::string& place) const {
    int pieces = 0;
    for (const auto& level : store->read()->shelf()) {
      if (level.place == place) pieces += level.quantity;
    }
    return pieces;
  }
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
};

}  // namespace

TEST_CASE("A move says in words and numbers what goes where, for whom, and what is gained") {
  const auto move = two_to_north();
  const auto plan = plan_of({move});
  CHECK(move_words(move) == "2 of LN-1 from main store to North (lot L8, use by 31 Jan 2027)");
  CHECK(
      why(move, plan) ==
      "North: 0 on hand, 1 on the way; until 3 Dec 2026 (7 days to the next round, then 1 day on "
      "the way) 1.4 are expected to be needed there. Expected to need it: P1 left (35 %), P2 "
      "right (under 1 %), 1 more part in use and new patients (0.2 pieces). The chance to run out "
      "there falls from 41 % to 5 %. main store: 3 on hand, 1 reserved, 0.3 expected to be "
      "needed; the chance to run out there rises from 2 % to 4 %. Of the item 0.25 pieces are "
      "then expected to be missing, without moves 0.90.");
  CHECK(summary_words(plan) == "2 pieces in 1 move, meant to last until the next round in 7 days.");
  CHECK(nothing_to_move_words({}).starts_with("All stock is kept in one place."));
  CHECK(nothing_to_move_words(plan_of({})).starts_with("Nothing needs to be moved"));
}

TEST_CASE("The chosen move is sent or all of them, and nothing when one has gone meanwhile") {
  const Branch clinic;
  const auto day = clinic.day(plan_of({two_to_north()}));
  const auto rows = move_rows(*day);
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].cells.size() == move_columns().size());
  const auto* move = find_move(*day, rows[0].id);
  REQUIRE(move != nullptr);
  CHECK(find_move(*day, "gone") == nullptr);
  const auto form = send_form(*day, *move);
  REQUIRE(form.fields[0].choices.size() == 1);
  const auto send = [&](store::UnitOfWork& work) {
    return form.book(work, {form.fields[0].value});
  };
  const auto booked = clinic.book(send);
  REQUIRE(booked);
  CHECK(booked->movements.size() == 2);
  CHECK(booked->movements[0].reason == "restock of North");
  CHECK(clinic.at("main store") == 1);
  CHECK(clinic.at("in transit to North") == 2);
  CHECK(clinic.book(send).error().sentence ==
        "Only 1 of LN-1, lot L8 lies at main store; 2 cannot leave it.");
  auto half = two_to_north();
  half.lots[0].quantity = 1;
  const std::vector both{half, two_to_north()};
  CHECK_FALSE(
      clinic.book([&](store::UnitOfWork& work) { return book_restock(work, both, import_day()); }));
  CHECK(clinic.at("main store") == 1);
}

TEST_CASE("A patient belongs to a branch, on the card too, until that is changed") {
  const Branch clinic;
  CHECK(patient_card(*clinic.day(), {"P1"}, false).visit.ends_with("Belongs to North."));
  CHECK(patient_card(*clinic.day(), {"P2"}, false).visit.ends_with("Belongs to main store."));
  const auto put = [&](const std::string& patient, const std::string& place) {
    return clinic.book(
        [&](store::UnitOfWork& work) { return book_patient_place(work, {patient}, place); });
  };
  CHECK(put("P9", "North").error().sentence == "There is no patient 'P9'; check the reference.");
  CHECK(
      put("P2", "Noth").error().sentence ==
      "'Noth' is not a store of the clinic (main store and North); correct the name, or record it "
      "as a place first.");
  REQUIRE(put("P2", "North"));
  const auto log = clinic.store->read()->changes(1);
  CHECK(log[0].record_kind == "patient");
  CHECK(log[0].who == "tester");
  const auto form = patient_place_form(*clinic.day(), {"P2"});
  CHECK(form.fields[0].value == "North");
  const auto back =
      clinic.book([&](store::UnitOfWork& work) { return form.book(work, {"main store"}); });
  REQUIRE(back);
  CHECK(back->notes.at(0) == "P2 belongs to main store.");
  REQUIRE(put("P1", ""));
  CHECK(patient_card(*clinic.day(), {"P1"}, false).visit.find("Belongs") == std::string::npos);
}

TEST_CASE("A file without the column place leaves patients where they belong") {
  const Branch clinic;
  clinic.folder.write("patients.csv", "patient_ref,given_name\nP1,Ada\nP2,\n");
  import(*clinic.store, clinic.folder.path());
  CHECK(clinic.store->read()->patient({"P1"})->record.place == "North");
}

}  // namespace restock_test
