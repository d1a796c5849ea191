#include "desk/recall.hpp"

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/recall_words.hpp"

namespace recall_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

const Date today = import_day();
const store::Author author{"tester", "notice 7 of the maker"};

struct FullClinic {
  FullClinic() {
    write_full_folder(folder);
    folder.write("stock.csv",
                 "item_code,lot,use_by,quantity,place\n"
                 "LN-1,L8,2027-01-31,3,main store\nLN-1,L8,2027-02-28,1,room 2\n"
                 "LN-1,L9,2027-01-31,2,main store\nLN-1,,,1,room 2\n");
    import(*store, folder.path());
  }
  [[nodiscard]] desk::RecallNotice notice(const std::string& lot) const {
    return *desk::look_up_recall(*store->read(), {"LN-1"}, lot, today);
  }
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
};

std::string text(const std::vector<std::string>& lines) {
  std::string made;
  for (const auto& line : lines) made += line + "\n";
  return made;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A recall finds the patient, the shelves and the open orders of a lot") {
  const FullClinic clinic;
  const auto notice = clinic.notice("L8");
  CHECK(notice.item.description == "Liner, locking");
  REQUIRE(notice.found.patients.size() == 1);
  CHECK(notice.found.patients[0].visit == make_date(2026, 12, 1));
  CHECK(notice.found.stock.size() == 3);
  CHECK(notice.found.orders.size() == 2);
  CHECK(notice.found.other_lots == std::vector<std::string>{"L7", "L9"});
  CHECK_FALSE(clinic.notice("L7").found.patients[0].in_hands());
}

TEST_CASE("The narrow reads find the same as the whole clinic does") {
  const FullClinic clinic;
  const auto whole = store::load_clinic(*clinic.store->read());
  for (const std::string lot : {"L7", "L8", "L9", "", "none"}) {
    supply::ItemRecords records{{}, whole.patients, {}, {}};
    for (const auto& unit : whole.units) {
      if (unit.item.text == "LN-1") records.units.push_back(unit);
    }
    for (const auto& level : whole.shelf) {
      if (level.lot.item.text == "LN-1") records.shelf.push_back(level);
    }
    for (const auto& line : whole.order_lines) {
      if (line.item.text == "LN-1") records.order_lines.push_back(line);
    }
    const auto expected = supply::find_recalled({"LN-1"}, lot, records, today);
    const auto found = clinic.notice(lot).found;
    CHECK(desk::recall_summary(found) == desk::recall_summary(expected));
    CHECK(found.orders == expected.orders);
    REQUIRE(found.stock.size() == expected.stock.size());
    for (std::size_t i = 0; i < found.stock.size(); ++i) {
      CHECK(found.stock[i].level == expected.stock[i].level);
    }
  }
}

TEST_CASE("An item that the catalogue does not have is refused in one sentence") {
  const FullClinic clinic;
  const auto refused = desk::look_up_recall(*clinic.store->read(), {"LN-2"}, "L8", today);
  REQUIRE_FALSE(refused);
  CHECK(holds(refused.error().sentence, "'LN-2'"));
}

TEST_CASE("The call list says what to look at, and carries the caution") {
  const FullClinic clinic;
  const auto list = text(desk::recall_lines(clinic.notice("L8"), desk::Names::left_out));
  CHECK(holds(list, "Recall of LN-1, Liner, locking, lot L8"));
  CHECK(holds(list,
              "1 patient has a part of it, 0 had one; 5 pieces are on shelves and 0 in "
              "quarantine; 2 order lines are open."));
  CHECK(holds(list, "P1  next visit 1 Dec 2026"));
  CHECK(holds(list, "left, lot L8, serial S2, issued 5 Jul 2025"));
  CHECK(holds(list, "main store: 3 pieces, lot L8, use by 31 Jan 2027"));
  CHECK(holds(list,
              "room 2: 1 piece, no lot recorded, no use-by date recorded; its lot is not "
              "recorded: look at the part"));
  CHECK(holds(list, "O-2  Nordpol Teile: 2 of 2 pieces to come, ordered 1 Jun 2025"));
  CHECK(holds(list, "not on this list: L7, L9."));
  CHECK(holds(list, desk::recall_caution()));
  CHECK_FALSE(holds(list, "Muster"));
  CHECK(holds(text(desk::recall_lines(clinic.notice("L8"), desk::Names::shown)), "Ada Muster"));
}

TEST_CASE("Nothing found is not called safe") {
  const auto store = empty_store();
  {
    const auto work = store->begin_write(author);
    Item item;
    item.code = {"X"};
    item.currency = {"EUR"};
    work->put(item);
    work->commit();
  }
  const auto notice = desk::look_up_recall(*store->read(), {"X"}, "L", today);
  REQUIRE(notice);
  const auto list = text(desk::recall_lines(*notice, desk::Names::left_out));
  CHECK(holds(list, "proves nothing"));
  CHECK(holds(list, desk::recall_caution()));
}

TEST_CASE("Recalled stock goes to quarantine once, by movements that say why") {
  const FullClinic clinic;
  const auto before = clinic.store->read()->movements();
  const auto moved = desk::quarantine_recalled(*clinic.store, {"LN-1"}, "L8", today, author);
  REQUIRE(moved.size() == 2);
  CHECK(text(desk::quarantine_lines(moved)) ==
        "3 pieces of lot L8 moved from main store to quarantine.\n"
        "1 piece of lot L8 moved from room 2 to quarantine.\n");
  const auto after = clinic.store->read()->movements();
  REQUIRE(after.size() == before.size() + 4);
  CHECK(std::equal(before.begin(), before.end(), after.begin()));
  for (std::size_t i = before.size(); i < after.size(); ++i) {
    CHECK(after[i].kind == MovementKind::transfer);
    CHECK(after[i].reason == "notice 7 of the maker");
    CHECK(after[i].on == today);
  }
  int quarantined = 0;
  int pieces = 0;
  for (const auto& level : clinic.store->read()->shelf()) {
    pieces += level.quantity;
    if (is_quarantine(level.place)) quarantined += level.quantity;
  }
  CHECK(quarantined == 4);
  CHECK(pieces == 7);
  CHECK(desk::quarantine_recalled(*clinic.store, {"LN-1"}, "L8", today, author).empty());
  CHECK(clinic.store->read()->movements() == after);
  CHECK(clinic.store->read()->changes(1).front().why == "notice 7 of the maker");
  CHECK(clinic.store->verify().empty());
}

}  // namespace recall_test
