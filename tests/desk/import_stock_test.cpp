#include <algorithm>

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"

namespace import_stock_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

/// A clinic with items A and B, and counts of them.
struct Counts {
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
  desk::ImportReport report;

  Counts() { folder.write("catalogue.csv", "item_code,kind\nA,sock\nB,sock\n"); }

  /// "item/lot/place=quantity" of the whole shelf, sorted.
  std::vector<std::string> count(
      const std::string& rows, const std::string& header = "item_code,lot,use_by,quantity,place") {
    folder.write("stock.csv", header + "\n" + rows);
    report = import(*store, folder.path());
    return shelf();
  }
  std::vector<std::string> shelf() const {
    std::vector<std::string> made;
    for (const auto& level : store->read()->shelf()) {
      made.push_back(level.lot.item.text + "/" + level.lot.lot + "/" + level.place + "=" +
                     std::to_string(level.quantity));
    }
    std::ranges::sort(made);
    return made;
  }
  std::vector<StockMovement> movements() const { return store->read()->movements(); }
};

using Shelf = std::vector<std::string>;

}  // namespace

TEST_CASE("A first count is a receipt, a later one a correction by the difference") {
  Counts counts;
  CHECK(counts.count("A,L1,,3,main\nA,L1,,2,main\n") == Shelf{"A/L1/main=5"});
  REQUIRE(counts.movements().size() == 1);
  const auto receipt = counts.movements()[0];
  CHECK(receipt.kind == MovementKind::receipt);
  CHECK(receipt.quantity == 5);
  CHECK(receipt.on == import_day());
  CHECK(receipt.reason == "count in stock.csv");
  CHECK(report_of(counts.report, "stock.csv").added == 2);
  CHECK(counts.count("A,L1,,4,main\n") == Shelf{"A/L1/main=4"});
  REQUIRE(counts.movements().size() == 2);
  CHECK(counts.movements()[1].kind == MovementKind::count_correction);
  CHECK(counts.movements()[1].quantity == -1);
  CHECK(report_of(counts.report, "stock.csv").changed == 1);
}

TEST_CASE("The same count again records nothing") {
  Counts counts;
  counts.count("A,L1,2027-01-31,3,main\nB,,,0,main\n");
  const auto movements = counts.movements().size();
  const auto changes = change_count(*counts.store);
  counts.count("A,L1,2027-01-31,3,main\nB,,,0,main\n");
  CHECK(counts.movements().size() == movements);
  CHECK(change_count(*counts.store) == changes);
  CHECK(report_of(counts.report, "stock.csv").unchanged == 2);
}

TEST_CASE("Lots that a counted item and place no longer lists go to zero, other stock is left") {
  Counts counts;
  counts.count("A,L1,,3,main\nA,L2,,3,main\nA,L3,,3,annex\nB,L4,,3,main\n");
  CHECK(counts.count("A,L1,,3,main\n") == Shelf{"A/L1/main=3", "A/L3/annex=3", "B/L4/main=3"});
  CHECK(report_of(counts.report, "stock.csv").notes ==
        std::vector<std::string>{
            "Lot 'L2' of A at main is not listed: 3 corrected to 0.",
            "Stock that the file does not count was left as it is: 2 lots of A, B."});
}

TEST_CASE("A blank place is the main place") {
  Counts counts;
  const auto main_place = counts.store->read()->settings().main_place;
  CHECK(counts.count("A,L1,,3,\n") == Shelf{"A/L1/" + main_place + "=3"});
}

TEST_CASE("A count without the use-by date means the lot as it is known") {
  Counts counts;
  counts.count("A,L1,2027-01-31,3,main\n");
  CHECK(counts.count("A,L1,2,main\n", "item_code,lot,quantity,place") == Shelf{"A/L1/main=2"});
  CHECK(counts.store->read()->shelf()[0].lot.use_by == make_date(2027, 1, 31));
  CHECK(report_of(counts.report, "stock.csv").notes ==
        std::vector<std::string>{"Line 2: the use-by date 2027-01-31 of lot 'L1' is kept."});
}

TEST_CASE("A refused row keeps unlisted lots of its item as they are") {
  Counts counts;
  counts.count("A,L1,,3,main\nA,L2,,3,main\nB,L3,,3,main\nB,L4,,3,main\n");
  CHECK(counts.count("A,L1,,2,main\nA,L9,,many,main\nB,L3,,2,main\n") ==
        Shelf{"A/L1/main=2", "A/L2/main=3", "B/L3/main=2"});
  CHECK(refusals(counts.report) ==
        std::vector<std::string>{"stock.csv 3 quantity: 'many' is not a whole number; write digits "
                                 "only, with '.' before any decimals"});
}

TEST_CASE("Rows of a lot with a refused row wait with it, so that the sum is right") {
  Counts counts;
  CHECK(counts.count("A,L1,,3,main\nA,L1,,x,main\n") == Shelf{});
  CHECK(refusals(counts.report)[0] ==
        "stock.csv 2 : counts the same lot as line 3, which is refused; correct that one, and both "
        "are "
        "summed");
  const auto corrected =
      replaced(text_of(counts.report.rejects_folder / "stock.csv"), ",x,", ",2,");
  ClinicFolder again;
  again.write("stock.csv", corrected);
  CHECK(import(*counts.store, again.path()).clean());
  CHECK(counts.shelf() == Shelf{"A/L1/main=5"});
}

TEST_CASE("A file of corrected rows empties no lot") {
  Counts counts;
  counts.count("A,L1,,3,main\nA,L2,,x,main\n");
  ClinicFolder again;
  again.write("stock.csv",
              replaced(text_of(counts.report.rejects_folder / "stock.csv"), ",x,", ",2,"));
  CHECK(import(*counts.store, again.path()).clean());
  CHECK(counts.shelf() == Shelf{"A/L1/main=3", "A/L2/main=2"});
}

TEST_CASE("A negative count and an unknown item are refused") {
  Counts counts;
  counts.count("A,L1,,-1,main\nX,L1,,1,main\n");
  REQUIRE(counts.report.refused.size() == 2);
  CHECK(counts.report.refused[0].column == "quantity");
  CHECK(counts.report.refused[1].column == "item_code");
  CHECK(counts.shelf().empty());
}

}  // namespace import_stock_test
