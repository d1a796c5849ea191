#include "desk/counting/count_entry.hpp"

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/counting/count_plan.hpp"
#include "desk/counting/count_words.hpp"
#include "desk/speaking.hpp"

namespace count_entry_test {

using namespace sparewell;
using namespace sparewell::test;
using desk::CountEntry;

namespace {

const Date today = import_day();
const store::Author author{"tester", "a count of the shelf"};

/// L-1 lots A (use by 2028-01-31, 5 pieces) and B (2), S-1 without lot (10), all in the main store.
struct CountedClinic {
  CountedClinic() {
    folder.write("catalogue.csv",
                 "item_code,description,kind,material,unit_cost,currency\n"
                 "L-1,Liner,liner,silicone,100,EUR\nS-1,Sock,sock,fabric,,\n");
    folder.write("stock.csv",
                 "item_code,lot,use_by,quantity,place\nL-1,A,2028-01-31,5,main store\n"
                 "L-1,B,,2,main store\nS-1,,,10,main store\n");
    import(*store, folder.path());
  }
  [[nodiscard]] int on_shelf(const std::string& item, const std::string& lot) const {
    for (const auto& level : store->read()->shelf_of({item})) {
      if (level.lot.lot == lot) return level.quantity;
    }
    return 0;
  }
  desk::CountReview book(const desk::CountSheet& sheet, bool moved = false) const {
    return desk::book_count(*store, sheet, {"Ina", moved}, today, author);
  }
  /// The sheet as written, filled in by `counts` in the order of its rows; "" leaves a row blank.
  desk::CountSheet filled(const std::vector<std::string>& counts) const {
    const auto plan = desk::read_count_plan(*store->read(), today, "", 0);
    auto list = desk::count_sheet(plan->candidates, plan->clinic, today, true);
    auto& rows = list.sheets[0].rows;
    REQUIRE(rows.size() == counts.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (!counts[i].empty()) rows[i].cells[7] = counts[i];
    }
    const auto file = folder.path() / "count.xlsx";
    exchange::write_list_workbook(list, file);
    const auto sheet = desk::read_count_sheet(*exchange::read_sheet(file));
    REQUIRE(sheet.has_value());
    return *sheet;
  }
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
};

CountEntry entry(const std::string& item, const std::string& lot, int counted) {
  CountEntry made;
  made.lot.item = {item};
  made.lot.lot = lot;
  made.place = "main store";
  made.counted = counted;
  return made;
}

}  // namespace

TEST_CASE("A sheet that was filled in is read back, and only what was counted is booked") {
  const CountedClinic clinic;
  // L-1 A and B, then S-1, which ranks alike because its cost is not known.
  const auto sheet = clinic.filled({"4", "2", ""});
  CHECK(sheet.blank == 1);
  REQUIRE(sheet.entries.size() == 2);
  CHECK(sheet.entries[0].lot == Lot{{"L-1"}, "A", make_date(2028, 1, 31)});
  CHECK(sheet.entries[0].on_sheet == 5);

  const auto shown = desk::review_count(*clinic.store->read(), sheet);
  CHECK(shown.differing() == 1);
  CHECK(shown.findings[0].difference() == -1);
  CHECK(*shown.findings[0].value() == Money{-10000, {"EUR"}});
  CHECK(clinic.on_shelf("L-1", "A") == 5);
  CHECK(desk::count_line(shown.findings[0]) ==
        "main store  L-1 lot A: 4 counted, 5 recorded, 1 fewer (-100.00 EUR)");
  CHECK(desk::count_summary(shown) ==
        "2 lots were counted: 1 agrees, 1 differs (100.00 EUR short). 1 row is blank and left "
        "alone.");

  const auto booked = clinic.book(sheet);
  CHECK(booked.booked() == 2);
  CHECK(clinic.on_shelf("L-1", "A") == 4);
  CHECK(clinic.on_shelf("S-1", "") == 10);
  const auto snapshot = clinic.store->read();
  CHECK(snapshot->counts().size() == 2);
  const auto movement = snapshot->movements().back();
  CHECK(movement.kind == MovementKind::count_correction);
  CHECK(movement.reason == "count of " + iso_text(today) + " by Ina");
}

TEST_CASE("A sheet is read in the language that it was written in, and in English") {
  const CountedClinic clinic;
  {
    const Speaking spanish{{"es", "", false}};
    const auto sheet = clinic.filled({"4", "2", ""});
    CHECK(sheet.blank == 1);
    REQUIRE(sheet.entries.size() == 2);
    CHECK(sheet.entries[0].counted == 4);
    CHECK(sheet.entries[0].lot == Lot{{"L-1"}, "A", make_date(2028, 1, 31)});
  }
  const auto english = clinic.filled({"3", "", "9"});
  const Speaking spanish{{"es", "", false}};
  const auto again =
      desk::read_count_sheet(*exchange::read_sheet(clinic.folder.path() / "count.xlsx"));
  REQUIRE(again.has_value());
  REQUIRE(again->entries.size() == english.entries.size());
  CHECK(again->entries[0].counted == 3);
}

TEST_CASE("The same sheet booked again changes nothing") {
  const CountedClinic clinic;
  const auto sheet = clinic.filled({"4", "2", "9"});
  (void)clinic.book(sheet);
  const auto before = clinic.store->read()->counts().size();
  const auto again = clinic.book(sheet);
  CHECK(again.differing() == 0);
  CHECK(clinic.on_shelf("L-1", "A") == 4);
  // B agreed and may have been counted again; A and S-1 were corrected, and are not kept twice.
  CHECK(clinic.store->read()->counts().size() == before + 1);
}

TEST_CASE("A lot that moved since the sheet was written is said and not booked") {
  const CountedClinic clinic;
  const auto sheet = clinic.filled({"3", "2", ""});
  {
    const auto work = clinic.store->begin_write(author);
    work->record(
        {{{"L-1"}, "A", make_date(2028, 1, 31)}, "main store", MovementKind::issue, -1, today, ""});
    work->commit();
  }
  const auto booked = clinic.book(sheet);
  CHECK(booked.moved() == 1);
  CHECK_FALSE(booked.findings[0].booked);
  CHECK(clinic.on_shelf("L-1", "A") == 4);
  CHECK(desk::count_line(booked.findings[0]).find("moved since the sheet said 5") !=
        std::string::npos);
  CHECK(clinic.book(sheet, true).findings[0].booked);
  CHECK(clinic.on_shelf("L-1", "A") == 3);
}

TEST_CASE("Typed counts find the lot as it lies there; what cannot be meant is refused") {
  const CountedClinic clinic;
  auto dated = entry("L-1", "A", 5);
  dated.lot.use_by = make_date(2027, 1, 1);
  const auto review = desk::review_count(
      *clinic.store->read(), {{entry("L-1", "A", 6), entry("L-1", "A", 7), entry("Z-9", "A", 1),
                               dated, entry("L-1", "NEW", 2)},
                              {},
                              0});
  REQUIRE(review.findings.size() == 2);
  CHECK(review.findings[0].entry.lot.use_by == make_date(2028, 1, 31));
  CHECK(review.findings[0].difference() == 1);
  CHECK(review.findings[1].recorded == 0);
  REQUIRE(review.refused.size() == 3);
  CHECK(desk::refused_count_line(review.refused[1]).find("Z-9") != std::string::npos);
  CHECK(desk::count_table(review).size() == 5);
}

TEST_CASE("Rows with a wrong count are refused one by one, and a strange file as a whole") {
  const CountedClinic clinic;
  const auto sheet = clinic.filled({"-1", "2.5", "many"});
  CHECK(sheet.entries.empty());
  REQUIRE(sheet.refused.size() == 3);
  CHECK(sheet.refused[0].column == "Counted");
  const auto other = desk::read_count_sheet(*exchange::read_sheet_bytes("x.csv", "a,b\n1,2\n"));
  REQUIRE_FALSE(other.has_value());
  CHECK(other.error().sentence.starts_with("x.csv has no row with the titles"));
  const auto added = desk::read_count_sheet(*exchange::read_sheet_bytes(
      "x.csv", "Place,Item,Lot,Use by,Counted\nshed,L-1,N1,2029-02-01,3\n,L-1,N2,soon,1\n"));
  REQUIRE(added.has_value());
  CHECK(added->entries.size() == 1);
  CHECK(added->refused.size() == 1);
}

}  // namespace count_entry_test
