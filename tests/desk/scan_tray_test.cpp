#include "desk/scan_tray.hpp"

#include <doctest/doctest.h>

#include "desk/sample_day.hpp"

namespace scan_tray_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

using Sort = ScanAnswer::Sort;

OrderLine ordered(const std::string& ref, const std::string& item, int quantity) {
  OrderLine line;
  line.supplier = {"Tern"};
  line.order_ref = ref;
  line.item = {item};
  line.ordered_on = test_today - days{10};
  line.quantity = quantity;
  return line;
}

/// PO-1 of Tern: three A-28, one of them for P-2, and one B-28.
DayPtr day() {
  auto made = test_assessment();
  auto& clinic = made.clinic;
  // Item numbers with their check digit, from tests/desk/label_item_test.
  clinic.items[0].gtin = "06291041500213";
  clinic.items[1].gtin = "51022222233336";
  clinic.items[0].shelf_life_days = 700;
  clinic.order_lines = {ordered("PO-1", "A-28", 3), ordered("PO-2", "B-28", 1)};
  OrderPiece piece;
  piece.supplier = {"Tern"};
  piece.order_ref = "PO-1";
  piece.item = {"A-28"};
  piece.patient = {"P-2"};
  piece.needed_on = test_today + days{5};
  clinic.order_pieces = {piece};
  return std::make_shared<const Day>(std::move(made));
}

ScanTray tray() {
  return {day(), "PO-1", "Tern", "main store"};
}

const std::string first = "(01)06291041500213(17)280630(10)LA(21)X1";
const std::string second = "(01)06291041500213(17)280630(10)LA(21)X2";
const std::string third = "(01)06291041500213(17)280630(10)LB(21)X3";

bool says(const ScanAnswer& answer, const std::string& part) {
  const bool found = answer.sentence.find(part) != std::string::npos;
  if (!found) MESSAGE(answer.sentence);
  return found;
}

}  // namespace

TEST_CASE("Each scan says what it was, where it goes, and how many are in") {
  auto made = tray();
  CHECK(made.empty());
  const auto one = made.scan(first);
  CHECK(one.sort == Sort::taken);
  CHECK(says(one, "A-28, lot LA, use by 30 Jun 2028, serial number X1: put it aside for P-2"));
  CHECK(says(one, "who needs it by 30 Nov 2026"));
  CHECK(says(one, "1 of 3 to come on PO-1 are in."));
  const auto two = made.scan(second);
  CHECK(says(two, "put it to main store. 2 of 3 to come on PO-1 are in."));
  REQUIRE(made.rows().size() == 1);
  CHECK(made.rows()[0].cells[3].text == "2");
  CHECK(made.rows()[0].cells[4].text == "X1 and X2");
  CHECK(says({Sort::taken, made.summary()}, "To be booked: 2 pieces of 1 item, 1 of them for"));
  CHECK(made.scan(third).sort == Sort::taken);
  const auto requests = made.requests();
  REQUIRE(requests.size() == 2);  // one a lot
  CHECK(requests[0].quantity == 2);
  CHECK(requests[0].serials == std::vector<std::string>{"X1", "X2"});
  CHECK(requests[0].order_ref == "PO-1");
  CHECK(requests[1].lot == "LB");
}

TEST_CASE("What should not be taken is refused in a sentence, and is not in the tray") {
  auto made = tray();
  CHECK(made.scan(first).sort == Sort::taken);
  const auto refused = [&](const std::string& scan, const std::string& why) {
    const auto answer = made.scan(scan);
    CHECK(answer.sort == Sort::refused);
    CHECK(says(answer, why));
    CHECK(made.requests().size() == 1);
  };
  refused(first, "serial number X1 of A-28 was scanned already");
  refused("(01)06291041500213(17)280630(10)LA(21)S1", "recorded already, with patient P-1");
  refused("(01)06291041500213(17)261124(10)LA(21)X4", "A-28 expired on 24 Nov 2026");
  refused("(01)51022222233336(10)LZ", "order PO-1 has no pieces of B-28 to come: wrong item");
  refused("(01)06291041500213(17)280630(10)LA(30)9", "only 3 pieces of A-28 were still to come");
  refused("nonsense", "Not taken: ");
}

TEST_CASE("A second barcode completes the package before it") {
  auto made = tray();
  CHECK(made.scan("(17)280630(10)LA").sort == Sort::refused);
  const auto one = made.scan("(01)06291041500213");
  CHECK(one.sort == Sort::look);
  CHECK(says(one, "no use-by date: scan its second barcode"));
  CHECK(made.scan("(17)280630(10)LA").sort == Sort::taken);
  REQUIRE(made.requests().size() == 1);
  CHECK(made.requests()[0].quantity == 1);
  CHECK(made.requests()[0].lot == "LA");
  CHECK(made.scan("(10)LB").sort == Sort::refused);
}

TEST_CASE("The last scan is taken back, and the one before it too") {
  auto made = tray();
  CHECK_FALSE(made.can_undo());
  CHECK(made.undo().sort == Sort::look);
  (void)made.scan(first);
  (void)made.scan(second);
  CHECK(says(made.undo(), "The last scan, of A-28, was taken back: 1 piece in."));
  CHECK(made.requests()[0].serials == std::vector<std::string>{"X1"});
  CHECK(made.scan(second).sort == Sort::taken);
  (void)made.undo();
  (void)made.undo();
  CHECK(made.empty());
}

TEST_CASE("What was booked leaves the tray and still counts") {
  auto made = tray();
  (void)made.scan(first);
  (void)made.scan(third);
  made.booked({0});
  CHECK(made.requests().size() == 1);
  CHECK_FALSE(made.can_undo());
  CHECK(made.scan(first).sort == Sort::refused);  // the same serial number
  CHECK(says(made.scan(second), "3 of 3 to come on PO-1 are in."));
}

TEST_CASE("What was left unbooked is scanned again, and what does not fit any more is said") {
  auto left = tray();
  REQUIRE(left.scan(first).sort == Sort::taken);
  REQUIRE(left.scan("(01)06291041500213(10)LA").sort == Sort::look);
  REQUIRE(left.scan("(17)280630(21)X2").sort != Sort::refused);
  const auto texts = left.texts();
  CHECK(texts == std::vector<std::string>{first, "(01)06291041500213(10)LA", "(17)280630(21)X2"});

  auto again = tray();
  CHECK(again.key() == left.key());
  CHECK(says(again.bring_back(texts, "14:05"), "3 scans that were left unbooked at 14:05"));
  CHECK(again.texts() == texts);
  CHECK(again.rows().size() == left.rows().size());

  auto other = tray();
  REQUIRE(other.scan(first).sort == Sort::taken);
  const auto answer = other.bring_back({first, second}, "14:05");
  CHECK(answer.sort == Sort::refused);
  CHECK(says(answer, "A scan that was left unbooked at 14:05"));
  CHECK(says(answer, "was scanned already"));
}

TEST_CASE("All scans are discarded, and brought in again") {
  auto given = tray();
  REQUIRE(given.scan(first).sort == Sort::taken);
  CHECK(given.discard_all().sort == Sort::look);
  CHECK(given.empty());
  CHECK(given.texts().empty());
  CHECK(says(given.undo(), "in the tray again"));
  CHECK(given.texts() == std::vector<std::string>{first});
}

TEST_CASE("Without an order number an item's open orders are found") {
  ScanTray made{day(), "", "", "main store"};
  CHECK(says(made.scan("(01)51022222233336(10)LZ"), "1 of 1 to come on PO-2 are in."));
}

}  // namespace scan_tray_test
