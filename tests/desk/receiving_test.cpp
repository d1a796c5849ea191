#include "desk/receiving.hpp"

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/receiving_words.hpp"

namespace receiving_test {

using namespace sparewell;
using namespace sparewell::test;
using desk::ReceivingRequest;

namespace {

const Date today = import_day();
const store::Author author{"tester", "a box came"};

/// Two orders of supplier Tern for item L-1 (10 pieces, 2 of them there; and 4), one for item S-1.
struct OrderingClinic {
  OrderingClinic() {
    folder.write("suppliers.csv", "supplier\nTern\nAuk\n");
    folder.write("catalogue.csv",
                 "item_code,description,kind,material,supplier,supplier_item,lead_days,"
                 "shelf_life_days,gtin\n"
                 "L-1,Liner,liner,silicone,Tern,T-77,10,730,51022222233336\n"
                 "S-1,Sock,sock,fabric,Tern,T-78,10,,\n"
                 "V-1,Valve,valve,other,Auk,V 1,,,\n");
    folder.write("orders.csv",
                 "supplier,order_ref,item_code,ordered_on,quantity,received_on,received_quantity\n"
                 "Tern,PO-1,L-1,2026-10-01,10,2026-10-20,2\n"
                 "Tern,PO-2,L-1,2026-11-01,4,,\n"
                 "Tern,PO-2,S-1,2026-11-01,6,,\n"
                 "Auk,PO-2,L-1,2026-11-02,1,,\n");
    import(*store, folder.path());
  }
  Expected<desk::ReceivingOutcome> receive(const ReceivingRequest& request) const {
    return desk::receive_delivery(*store, request, today, author);
  }
  [[nodiscard]] OrderLine line(const std::string& supplier, const std::string& ref,
                               const std::string& item) const {
    for (const auto& row : store->read()->lines_of_order(ref)) {
      if (row.record.supplier.text == supplier && row.record.item.text == item) return row.record;
    }
    throw std::logic_error("no such line");
  }
  void set_state(const std::string& ref, OrderState state) const {
    const auto work = store->begin_write(author);
    for (const auto& row : work->lines_of_order(ref)) {
      auto changed = row.record;
      changed.state = state;
      work->put_instead(row.id, changed);
    }
    work->commit();
  }
  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
};

ReceivingRequest request(const std::string& ref, const std::string& item, int quantity) {
  ReceivingRequest made;
  made.order_ref = ref;
  made.item = item;
  made.quantity = quantity;
  made.lot = "A17";
  made.use_by = make_date(2028, 6, 30);
  return made;
}

ReceivingRequest scanned(const std::string& ref, const std::string& scan) {
  ReceivingRequest made;
  made.order_ref = ref;
  made.scans = {scan};
  return made;
}

std::string all(const std::vector<std::string>& lines) {
  std::string made;
  for (const auto& line : lines) made += line + "\n";
  return made;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::string refusal(const OrderingClinic& clinic, const ReceivingRequest& asked) {
  const auto before = change_count(*clinic.store);
  const auto outcome = clinic.receive(asked);
  CHECK(change_count(*clinic.store) == before);
  return outcome ? "" : outcome.error().sentence;
}

}  // namespace

TEST_CASE("A receipt fills the order line and the ledger together") {
  const OrderingClinic clinic;
  const auto outcome = clinic.receive(request("PO-1", "L-1", 3));
  REQUIRE(outcome);
  CHECK(outcome->is_recorded());
  CHECK(all(desk::receipt_lines(*outcome)) ==
        "3 pieces of L-1, lot A17, use by 30 Jun 2028, put to main store.\n"
        "Order PO-1 of Tern: 5 of 10 pieces received, 5 to come, on back-order.\n");
  CHECK(desk::finding_sentences(*outcome).empty());
  const auto line = clinic.line("Tern", "PO-1", "L-1");
  CHECK(line.received_quantity == 5);
  CHECK(line.received_on == today);
  const auto movements = clinic.store->read()->movements();
  REQUIRE(movements.size() == 1);
  CHECK(movements[0].kind == MovementKind::receipt);
  CHECK(movements[0].reason == "order PO-1 of Tern");
  CHECK(clinic.store->read()->shelf().front().quantity == 3);
  CHECK(clinic.line("Tern", "PO-2", "L-1").received_quantity == 0);
  CHECK(clinic.store->verify().empty());
}

TEST_CASE("A scan gives item, lot, use-by date and quantity") {
  const OrderingClinic clinic;
  const auto outcome = clinic.receive(scanned("PO-1", "(01)51022222233336(17)280630(10)B9(30)4"));
  REQUIRE(outcome);
  CHECK(outcome->delivery.lot == "B9");
  CHECK(outcome->delivery.use_by == make_date(2028, 6, 30));
  CHECK(outcome->delivery.quantity == 4);
  auto hibc = scanned("PO-1", "+A999T771/$$3280630C7N");  // check character computed
  hibc.quantity = 1;
  const auto second = clinic.receive(hibc);
  REQUIRE_MESSAGE(second, (second ? "" : second.error().sentence));
  CHECK(second->item.code.text == "L-1");
  CHECK(second->delivery.lot == "C7");
  CHECK(clinic.line("Tern", "PO-1", "L-1").received_quantity == 7);
}

TEST_CASE("What is typed must not contradict the label, but may settle a doubt") {
  const OrderingClinic clinic;
  const std::string label = "(01)51022222233336(17)280630(10)B9";
  auto asked = scanned("PO-1", label);
  CHECK(holds(refusal(clinic, asked), "Say how many"));
  asked.quantity = 1;
  asked.lot = "B8";
  CHECK(holds(refusal(clinic, asked), "The lot B8 was typed, but the label says B9"));
  asked.lot.reset();
  asked.use_by = make_date(2028, 7, 1);
  CHECK(holds(refusal(clinic, asked), "use-by date 2028-07-01"));
  asked.use_by.reset();
  asked.item = "S-1";
  CHECK(holds(refusal(clinic, asked), "The label is that of L-1, not of S-1"));
  auto doubtful = scanned("PO-1", "015102222223333610B917280630");
  doubtful.quantity = 1;
  CHECK(holds(refusal(clinic, doubtful), "a separator got lost"));
  doubtful.lot = "B9";
  doubtful.use_by = make_date(2028, 6, 30);
  CHECK(clinic.receive(doubtful)->is_recorded());
  CHECK(holds(refusal(clinic, scanned("PO-1", "(01)51022222233337")), "check digit"));
  CHECK(holds(refusal(clinic, scanned("PO-1", "(10)B9")), "does not say what the part is"));
  CHECK(holds(refusal(clinic, ReceivingRequest{}), "Name the item"));
  CHECK(holds(refusal(clinic, request("PO-1", "L-9", 1)), "no item 'L-9'"));
  CHECK(holds(refusal(clinic, request("PO-1", "L-1", 0)), "At least one"));
}

TEST_CASE("Wrong items and extra pieces are findings, and nothing is recorded") {
  const OrderingClinic clinic;
  const auto before = change_count(*clinic.store);
  const auto wrong = clinic.receive(request("PO-1", "S-1", 1));
  REQUIRE(wrong);
  CHECK_FALSE(wrong->is_recorded());
  CHECK(all(desk::finding_sentences(*wrong)) ==
        "Order PO-1 of Tern is for L-1, not for S-1: nothing was recorded; set the part aside and "
        "ask the supplier.\n");
  const auto extra = clinic.receive(request("PO-1", "L-1", 9));
  REQUIRE(extra);
  CHECK_FALSE(extra->is_recorded());
  CHECK(
      holds(all(desk::finding_sentences(*extra)),
            "9 pieces came, but 8 of order PO-1 of Tern were still to come: nothing was recorded"));
  CHECK(all(desk::receipt_lines(*extra)) == "Nothing was recorded.\n");
  CHECK(change_count(*clinic.store) == before);
  auto accepted = request("PO-1", "L-1", 9);
  accepted.accepted.extra = true;
  const auto taken = clinic.receive(accepted);
  REQUIRE(taken);
  CHECK(taken->is_recorded());
  CHECK(holds(all(desk::finding_sentences(*taken)), "it was recorded"));
  CHECK(clinic.line("Tern", "PO-1", "L-1").received_quantity == 11);
}

TEST_CASE("Without an order number the item's open orders are named, or the only one is taken") {
  const OrderingClinic clinic;
  const auto several = clinic.receive(request("", "L-1", 1));
  REQUIRE(several);
  CHECK(several->match.kind == supply::OrderMatch::Kind::several);
  CHECK(several->match.lines.size() == 3);
  CHECK(holds(all(desk::finding_sentences(*several)), "3 order lines of L-1 answer"));
  CHECK(desk::open_line_words(several->lines[several->match.lines[0]]) ==
        "PO-1  Tern  L-1: 8 of 10 pieces to come, ordered 1 Oct 2026");
  auto socks = request("", "S-1", 6);
  socks.use_by.reset();
  const auto only = clinic.receive(socks);
  REQUIRE(only);
  CHECK(only->is_recorded());
  CHECK(holds(all(desk::receipt_lines(*only)), "6 of 6 pieces received, complete"));
  auto auk = request("", "L-1", 1);
  auk.supplier = "Auk";
  CHECK(clinic.receive(auk)->is_recorded());
  CHECK(clinic.line("Auk", "PO-2", "L-1").outstanding() == 0);
  CHECK(holds(refusal(clinic, request("", "V-1", 1)), "No order has pieces of V-1"));
}

TEST_CASE("Drafts, cancelled orders and unknown numbers are refused, saying what to do") {
  const OrderingClinic clinic;
  CHECK(holds(refusal(clinic, request("PO-9", "L-1", 1)), "There is no order 'PO-9'"));
  clinic.set_state("PO-1", OrderState::draft);
  CHECK(refusal(clinic, request("PO-1", "L-1", 1)) ==
        "Order PO-1 of Tern is a draft that was not sent; mark it as sent first, and then receive "
        "the delivery.");
  clinic.set_state("PO-1", OrderState::cancelled);
  CHECK(holds(refusal(clinic, request("PO-1", "L-1", 1)), "was cancelled for L-1"));
}

TEST_CASE("Every finding is a sentence that says whether the delivery was recorded") {
  const OrderingClinic clinic;
  auto undated = request("PO-1", "L-1", 1);
  undated.use_by.reset();
  CHECK(holds(all(desk::finding_sentences(*clinic.receive(undated))),
              "L-1 has a shelf life, and no use-by date was given: nothing was recorded"));
  undated.accepted.no_use_by = true;
  CHECK(holds(all(desk::finding_sentences(*clinic.receive(undated))), "it was recorded"));
  auto expired = request("PO-1", "L-1", 1);
  expired.use_by = today - days{1};
  CHECK(holds(all(desk::finding_sentences(*clinic.receive(expired))), "has passed"));
  expired.place = "quarantine";
  CHECK(holds(all(desk::finding_sentences(*clinic.receive(expired))), "do not hand it out"));
  CHECK(clinic.receive(request("PO-1", "L-1", 1))->is_recorded());
  auto other_date = request("PO-1", "L-1", 1);
  other_date.use_by = make_date(2028, 6, 29);
  CHECK(holds(all(desk::finding_sentences(*clinic.receive(other_date))),
              "Lot A17 lies on the shelf with the use-by date"));
}

TEST_CASE("What is still to come is listed with the days it is overdue") {
  const OrderingClinic clinic;
  const auto lines = desk::read_still_to_come(*clinic.store->read(), "", today);
  REQUIRE(lines);
  REQUIRE(lines->size() == 4);
  CHECK(desk::expected_line_words(lines->front()) ==
        "PO-1  Tern  L-1: 8 of 10 pieces to come, ordered 1 Oct 2026, expected 11 Oct 2026, on "
        "back-order, 45 days overdue");
  CHECK(desk::read_still_to_come(*clinic.store->read(), "Auk", today)->size() == 1);
  CHECK_FALSE(desk::read_still_to_come(*clinic.store->read(), "Nobody", today));
}

namespace {

/// PO-2 of Tern with three socks for patients: no day, in ten days, and one that is promised.
void order_for_patients(const OrderingClinic& clinic) {
  const auto work = clinic.store->begin_write(author);
  int position = 0;
  for (const char* ref : {"P-1", "P-2", "P-3"}) {
    Patient patient;
    patient.ref = {ref};
    work->put(patient);
    OrderPiece piece;
    piece.supplier = {"Tern"};
    piece.order_ref = "PO-2";
    piece.item = {"S-1"};
    piece.position = ++position;
    piece.patient = patient.ref;
    if (position == 2) piece.needed_on = today + days{10};
    if (position == 3) piece.needed_on = today + days{3};
    piece.promised = position == 3;
    work->put(piece);
  }
  Reservation promised;
  promised.patient = {"P-3"};
  promised.item = {"S-1"};
  promised.place = "main store";
  promised.quantity = 1;
  work->put(promised);
  work->commit();
}

ReceivingRequest socks(int quantity) {
  auto made = request("PO-2", "S-1", quantity);
  made.supplier = "Tern";
  made.use_by.reset();
  return made;
}

std::vector<std::string> names(const std::vector<desk::PutAway>& pieces) {
  std::vector<std::string> made;
  for (const auto& piece : pieces) made.push_back(piece.patient.text);
  return made;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("Pieces for named patients are put away for them, the earliest need first") {
  const OrderingClinic clinic;
  order_for_patients(clinic);
  const auto first = clinic.receive(socks(2));
  REQUIRE_MESSAGE(first, (first ? "" : first.error().sentence));
  CHECK(names(first->put_away) == Names{"P-3", "P-2"});
  CHECK(names(first->waiting) == Names{"P-1"});
  CHECK(holds(all(desk::receipt_lines(*first)),
              "Put 1 piece away for P-2, needed by 5 Dec 2026.\nStill to come for P-1.\n"));
  auto kept = clinic.store->read()->all<Reservation>();
  REQUIRE(kept.size() == 2);  // what was promised before is not promised twice
  CHECK(kept[1].record == Reservation{{"P-2"}, {"S-1"}, "main store", 1, today + days{10}});
  const auto second = clinic.receive(socks(3));
  REQUIRE(second);
  CHECK(names(second->put_away) == Names{"P-1"});
  CHECK(second->waiting.empty());
  CHECK(clinic.receive(socks(1))->put_away.empty());
  CHECK(clinic.store->read()->all<Reservation>().size() == 3);
}

TEST_CASE("A piece that comes for a patient with a booked visit is not reserved a second time") {
  const OrderingClinic clinic;
  order_for_patients(clinic);  // P-2 and P-1 were not promised anything when it was ordered
  const auto book = [&](const char* patient, int pieces, int in_days) {
    const auto work = clinic.store->begin_write(author);
    work->put(Reservation{{patient}, {"S-1"}, "main store", pieces, today + days{in_days}});
    work->commit();
  };
  book("P-2", 1, 20);
  REQUIRE(clinic.receive(socks(3)));
  const auto kept = clinic.store->read()->all<Reservation>();
  REQUIRE(kept.size() == 3);  // P-3's promise, P-2's visit, and P-1's piece
  CHECK(kept[1].record == Reservation{{"P-2"}, {"S-1"}, "main store", 1, today + days{20}});
  CHECK(kept[2].record.patient.text == "P-1");
  // The visit's piece has come now: one that comes later is another one.
  const auto work = clinic.store->begin_write(author);
  OrderPiece piece;
  piece.supplier = {"Tern"};
  piece.order_ref = "PO-2";
  piece.item = {"S-1"};
  piece.position = 4;
  piece.patient = {"P-2"};
  piece.needed_on = today + days{40};
  work->put(piece);
  work->commit();
  REQUIRE(clinic.receive(socks(1)));
  const auto later = clinic.store->read()->all<Reservation>();
  REQUIRE(later.size() == 4);
  CHECK(later[3].record == Reservation{{"P-2"}, {"S-1"}, "main store", 1, today + days{40}});
}

TEST_CASE("Damaged pieces go into quarantine, are nobody's, and are still to come") {
  const OrderingClinic clinic;
  order_for_patients(clinic);
  auto asked = socks(2);
  asked.damaged = 3;
  CHECK(holds(refusal(clinic, asked), "count again"));
  asked.damaged = 2;
  asked.damage = "torn open";
  const auto all_broken = clinic.receive(asked);
  REQUIRE(all_broken);
  CHECK(all_broken->put_away.empty());
  CHECK(clinic.line("Tern", "PO-2", "S-1").received_quantity == 0);
  const auto shelf = clinic.store->read()->shelf();
  REQUIRE(shelf.size() == 1);
  CHECK(shelf[0].place == "quarantine");
  CHECK(clinic.store->read()->movements()[0].reason ==
        "order PO-2 of Tern, delivered damaged: torn open");
  CHECK(holds(all(desk::receipt_lines(*all_broken)), "the supplier still owes them"));
  const auto expected = desk::read_still_to_come(*clinic.store->read(), "Tern", today);
  REQUIRE(expected);
  for (const auto& line : *expected) {
    if (line.line.item.text == "S-1") CHECK(line.on_back_order);
  }
  asked.quantity = 3;
  asked.damaged = 1;
  asked.damaged_settled = true;
  const auto mixed = clinic.receive(asked);
  REQUIRE(mixed);
  CHECK(names(mixed->put_away) == Names{"P-3", "P-2"});
  CHECK(clinic.line("Tern", "PO-2", "S-1").received_quantity == 3);
  CHECK(clinic.store->verify().empty());
}

TEST_CASE("A damaged piece beyond the order is one too many, and none is owed for it") {
  const OrderingClinic clinic;
  order_for_patients(clinic);
  REQUIRE(clinic.receive(socks(clinic.line("Tern", "PO-2", "S-1").quantity)));
  auto asked = socks(1);
  asked.order_ref = "PO-2";
  asked.damaged = 1;
  const auto stopped = clinic.receive(asked);
  REQUIRE(stopped);
  CHECK_FALSE(stopped->is_recorded());
  CHECK(holds(all(desk::finding_sentences(*stopped)), "0 of order PO-2 of Tern"));
  asked.accepted.extra = true;
  const auto taken = clinic.receive(asked);
  REQUIRE(taken);
  CHECK(holds(all(desk::receipt_lines(*taken)), "nothing is owed for it"));
}

TEST_CASE("Serial numbers are kept with the movement, one a sound piece") {
  const OrderingClinic clinic;
  auto asked = socks(2);
  asked.serials = {"A", "B", "C"};
  CHECK(holds(refusal(clinic, asked), "3 serial numbers do not fit 2 sound pieces"));
  asked.serials = {"A", "A"};
  CHECK(holds(refusal(clinic, asked), "given twice"));
  asked.serials = {"A"};
  REQUIRE(clinic.receive(asked));
  auto scan = scanned("PO-1", "(01)51022222233336(17)280630(10)B9(21)77");
  scan.quantity = 1;
  REQUIRE(clinic.receive(scan));
  const auto movements = clinic.store->read()->movements();
  REQUIRE(movements.size() == 2);
  CHECK(movements[0].serials == std::vector<std::string>{"A"});
  CHECK(movements[1].serials == std::vector<std::string>{"77"});
}

TEST_CASE("Damaged pieces keep their serial numbers too") {
  const OrderingClinic clinic;
  auto asked = socks(3);
  asked.damaged = 1;
  asked.damage = "torn";
  asked.serials = {"A", "B"};
  asked.damaged_serials = {"C", "D"};
  CHECK(holds(refusal(clinic, asked), "2 serial numbers do not fit 1 damaged piece"));
  asked.damaged_serials = {"A"};
  CHECK(holds(refusal(clinic, asked), "given twice"));
  asked.damaged_serials = {"C"};
  const auto outcome = clinic.receive(asked);
  REQUIRE(outcome);
  CHECK(holds(all(receipt_lines(*outcome)), "serial number C came damaged"));
  const auto movements = clinic.store->read()->movements();
  REQUIRE(movements.size() == 2);
  CHECK(movements[1].place == "quarantine");
  CHECK(movements[1].serials == std::vector<std::string>{"C"});
}

TEST_CASE("A serial number that is known is asked about before it is received again") {
  const OrderingClinic clinic;
  auto asked = socks(1);
  asked.serials = {"A"};
  REQUIRE(clinic.receive(asked)->is_recorded());
  const auto before = change_count(*clinic.store);
  const auto again = clinic.receive(asked);
  REQUIRE(again);
  CHECK_FALSE(again->is_recorded());
  CHECK(change_count(*clinic.store) == before);
  CHECK(holds(all(finding_sentences(*again)), "Serial number A was received on"));
  asked.accepted.known_serial = true;
  const auto taken = clinic.receive(asked);
  REQUIRE(taken);
  CHECK(taken->is_recorded());
  CHECK(desk::finding_key(taken->receiving.findings[0].kind) == "known_serial");
}

TEST_CASE("A serial number that a patient has is named with the patient") {
  const OrderingClinic clinic;
  {
    const auto work = clinic.store->begin_write(author);
    Patient patient;
    patient.ref = {"P-77"};
    work->put(patient);
    Unit unit;
    unit.patient = patient.ref;
    unit.item = {"S-1"};
    unit.serial = "A";
    unit.issued_on = today - days{5};
    work->put(unit);
    work->commit();
  }
  auto asked = socks(1);
  asked.serials = {"A"};
  const auto outcome = clinic.receive(asked);
  REQUIRE(outcome);
  CHECK_FALSE(outcome->is_recorded());
  CHECK(holds(all(finding_sentences(*outcome)), "Serial number A was handed to P-77 on"));
}

}  // namespace receiving_test
