// What the window asks before stock is booked, and what the answers book.
#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/stock_form.hpp"
#include "desk/stock_list.hpp"

namespace stock_forms_test {

using namespace sparewell;
using namespace sparewell::desk;
using namespace sparewell::test;

namespace {

struct Shelf {
  Shelf() {
    write_full_folder(folder);
    folder.write("stock.csv",
                 "item_code,lot,use_by,quantity,place\n"
                 "LN-1,L8,2027-01-31,3,main store\nLN-1,L9,2020-01-31,2,main store\n");
    import(*store, folder.path());
  }
  [[nodiscard]] DayPtr day() const {
    Assessment assessment;
    assessment.today = import_day();
    assessment.clinic = store::load_clinic(*store->read());
    return std::make_shared<const Day>(std::move(assessment));
  }
  /// Books what the form asks for, with `answers` in place of its own.
  [[nodiscard]] Expected<Booked> book(const StockForm& form,
                                      const std::map<std::size_t, std::string>& answers) const {
    std::vector<std::string> given;
    for (const auto& field : form.fields) given.push_back(field.value);
    for (const auto& [at, answer] : answers) given.at(at) = answer;
    return in_one_work(*store, {"tester", form.why},
                       [&](store::UnitOfWork& work) { return form.book(work, given); });
  }
  [[nodiscard]] StockLevel lot(const std::string& number, const std::string& place) const {
    const auto now = day();
    for (const auto& level : now->clinic().shelf) {
      if (level.lot.lot == number && level.place == place) return level;
    }
    FAIL("no such lot");
    return {};
  }
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
};

}  // namespace

TEST_CASE("A form of the shelf books what was answered and names the field that is wrong") {
  const Shelf shelf;
  const auto form = lot_form(LotAction::move, *shelf.day(), shelf.lot("L8", "main store"));
  CHECK(form.intro == "LN-1, lot L8: 3 pieces lie at main store, use by 31 Jan 2027.");
  CHECK(shelf.book(form, {{0, "two"}}).error().sentence ==
        "Pieces: write a whole number from 1 on.");
  CHECK(shelf.book(form, {{0, "4"}, {1, "branch"}}).error().sentence ==
        "Only 3 of LN-1, lot L8 lie at main store; 4 cannot leave it.");
  REQUIRE(shelf.book(form, {{0, "2"}, {1, "branch"}}));
  const auto rows = away_rows(*shelf.day());
  REQUIRE(rows.size() == 1);
  const auto away = find_away(*shelf.day(), rows[0].id);
  REQUIRE(away);
  CHECK(away_action(away) == "&Arrived...");
  REQUIRE(shelf.book(away_form(*shelf.day(), *away), {}));
  CHECK(shelf.lot("L8", "branch").quantity == 2);
  CHECK(away_rows(*shelf.day()).empty());
}

TEST_CASE("What lies in quarantine is offered for release, an expired lot as expired") {
  const Shelf shelf;
  auto form = lot_form(LotAction::quarantine, *shelf.day(), shelf.lot("L8", "main store"));
  CHECK_FALSE(shelf.book(form, {}));
  REQUIRE(shelf.book(form, {{2, "smells"}}));
  form = lot_form(LotAction::quarantine, *shelf.day(), shelf.lot("L8", "quarantine"));
  CHECK(form.title == "Release from quarantine");
  REQUIRE(shelf.book(form, {{2, "checked"}}));
  form = lot_form(LotAction::write_off, *shelf.day(), shelf.lot("L9", "main store"));
  CHECK(form.fields[1].value == "expired");
  REQUIRE(shelf.book(form, {{0, "2"}}));
  form = lot_form(LotAction::write_off, *shelf.day(), shelf.lot("L8", "main store"));
  CHECK(form.fields[1].value == "damaged");
}

TEST_CASE("A loan and a return are settled where they are listed") {
  const Shelf shelf;
  const auto lot = shelf.lot("L8", "main store");
  const auto lent = shelf.book(lot_form(LotAction::lend, *shelf.day(), lot), {{1, "P1"}});
  REQUIRE(lent);
  CHECK(lent->notes[0].starts_with("Loan 1: back by "));
  CHECK_FALSE(shelf.book(lot_form(LotAction::lend, *shelf.day(), lot), {{1, "nobody"}}));
  REQUIRE(shelf.book(lot_form(LotAction::send_back, *shelf.day(), lot),
                     {{2, "RMA-1"}, {4, "seam opens"}}));
  CHECK(credit_sum_words(*shelf.day()) == "Credits due: 100.00 EUR");
  const auto rows = away_rows(*shelf.day());
  REQUIRE(rows.size() == 2);
  REQUIRE(shelf.book(away_form(*shelf.day(), *find_away(*shelf.day(), rows[0].id)),
                     {{0, "0"}, {2, "1"}}));
  REQUIRE(shelf.book(away_form(*shelf.day(), *find_away(*shelf.day(), rows[1].id)), {}));
  CHECK(away_rows(*shelf.day()).empty());
  const auto clinic = store::load_clinic(*shelf.store->read());
  CHECK(clinic.units.back().patient.text == "P1");
  CHECK(clinic.units.back().lot == "L8");
  CHECK(shelf.store->verify().empty());
}

TEST_CASE("A place is recorded with its sort, and stock at it then counts or not") {
  const Shelf shelf;
  const auto form = place_form(*shelf.day());
  REQUIRE(shelf.book(form, {{0, "cage"}, {1, "quarantine"}}));
  CHECK_FALSE(shelf.book(form, {{0, ""}}));
  CHECK_FALSE(shelf.book(form, {{0, "on loan"}}));
  REQUIRE(shelf.book(lot_form(LotAction::quarantine, *shelf.day(), shelf.lot("L8", "main store")),
                     {{1, "cage"}, {2, "smells"}}));
  CHECK(shelf.book(form, {{0, "cage"}, {1, "store"}}).error().sentence ==
        "1 piece lies in quarantine at cage; release it before the place changes its sort.");
}

TEST_CASE("A part is checked before it is lent, and a clinician may decide otherwise") {
  const Shelf shelf;
  {
    const auto work = shelf.store->begin_write({"tester", "a reaction was seen"});
    Sensitivity seen;
    seen.patient = {"P1"};
    seen.substance = "silicone";  // which LN-1 is declared to hold
    work->put(seen);
    work->commit();
  }
  const auto form = lot_form(LotAction::lend, *shelf.day(), shelf.lot("L8", "main store"));
  const auto refused = shelf.book(form, {{1, "P1"}});
  REQUIRE_FALSE(refused);
  CHECK(refused.error().sentence.find("silicone") != std::string::npos);
  CHECK(refused.error().sentence.find("A clinician may decide otherwise") != std::string::npos);
  CHECK_FALSE(shelf.book(form, {{1, "P1"}, {5, "Dr Example"}}));  // without a reason
  const auto lent = shelf.book(form, {{1, "P1"}, {5, "Dr Example"}, {6, "to try the size"}});
  REQUIRE(lent);
  const auto loan = shelf.store->read()->loan(lent->number);
  REQUIRE(loan);
  CHECK(loan->record.note.starts_with("decided by Dr Example: to try the size ("));
}

TEST_CASE("More than was due is taken as a credit when it is said to be right") {
  const Shelf shelf;
  REQUIRE(shelf.book(lot_form(LotAction::send_back, *shelf.day(), shelf.lot("L8", "main store")),
                     {{2, "RMA-1"}, {4, "seam opens"}}));
  const auto rows = away_rows(*shelf.day());
  REQUIRE(rows.size() == 1);
  const auto form = away_form(*shelf.day(), *find_away(*shelf.day(), rows[0].id));
  CHECK_FALSE(shelf.book(form, {{0, "120.00"}}));
  REQUIRE(form.fields[1].choices.size() == 4);
  CHECK(shelf.book(form, {{0, "120.00"}, {1, form.fields[1].choices[3]}}));
}

}  // namespace stock_forms_test
