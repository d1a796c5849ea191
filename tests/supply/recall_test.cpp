#include "supply/recall.hpp"

#include <doctest/doctest.h>

namespace recall_test {

using namespace sparewell;
using namespace sparewell::supply;

namespace {

const Date today = make_date(2026, 11, 25);
const ItemCode item{"L-1"};

Unit unit(const std::string& patient, const std::string& lot, int days_ago,
          std::optional<Date> ended_on = std::nullopt) {
  Unit made;
  made.patient = {patient};
  made.item = item;
  made.lot = lot;
  made.issued_on = today - days{days_ago};
  made.ended_on = ended_on;
  return made;
}

Patient patient(const std::string& ref, std::optional<Date> visit = std::nullopt) {
  Patient made;
  made.ref = {ref};
  made.next_visit = visit;
  return made;
}

StockLevel level(const std::string& lot, const std::string& place, int quantity) {
  return {{item, lot, make_date(2028, 1, 31)}, place, quantity};
}

OrderLine line(const std::string& ref, OrderState state, int quantity, int received) {
  OrderLine made;
  made.order_ref = ref;
  made.item = item;
  made.ordered_on = today - days{10};
  made.state = state;
  made.quantity = quantity;
  made.received_quantity = received;
  return made;
}

std::vector<std::string> refs(const Recall& recall) {
  std::vector<std::string> made;
  for (const auto& touched : recall.patients) made.push_back(touched.patient.ref.text);
  return made;
}

}  // namespace

TEST_CASE("Who has a part comes before who had one, and who comes soonest first") {
  ItemRecords records;
  records.units = {unit("had", "A", 300, today - days{10}),
                   unit("no visit", "A", 200),
                   unit("later", "A", 100),
                   unit("soon", "A", 50),
                   unit("missed", "A", 40),
                   unit("ends today", "A", 30, today),
                   unit("ends tomorrow", "A", 20, today + days{1}),
                   unit("other lot", "B", 10)};
  records.patients = {patient("later", today + days{60}), patient("soon", today),
                      patient("missed", today - days{1}), patient("had", today + days{5}),
                      patient("ends tomorrow", today + days{30})};
  const auto recall = find_recalled(item, "A", records, today);
  CHECK(refs(recall) == std::vector<std::string>{"soon", "ends tomorrow", "later", "missed",
                                                 "no visit", "had", "ends today"});
  CHECK_FALSE(recall.patients[3].visit);
  CHECK(recall.patients[4].in_hands());
  CHECK_FALSE(recall.patients[5].in_hands());
  CHECK(recall.other_lots == std::vector<std::string>{"B"});
}

TEST_CASE("A part in hands stands before ended ones, the last issued first") {
  ItemRecords records;
  records.units = {unit("P", "A", 100, today - days{3}), unit("P", "A", 300), unit("P", "A", 200)};
  const auto recall = find_recalled(item, "A", records, today);
  REQUIRE(recall.patients.size() == 1);
  const auto& units = recall.patients[0].units;
  CHECK(units[0].unit.issued_on == today - days{200});
  CHECK(units[1].unit.issued_on == today - days{300});
  CHECK_FALSE(units[2].in_hands);
}

TEST_CASE("A part whose lot is unknown or written differently is shown as such, not left out") {
  ItemRecords records;
  records.units = {unit("same", "A-12/x", 1), unit("alike", "a 12X", 1),
                   unit("none", "", 1),       unit("blank", " - ", 1),
                   unit("other", "A12", 1),   unit("accent", "A12X\xC3\xA9", 1)};
  const auto recall = find_recalled(item, "A-12/x", records, today);
  CHECK(refs(recall) == std::vector<std::string>{"alike", "blank", "none", "same"});
  CHECK(recall.patients[0].units[0].match == LotMatch::written_alike);
  CHECK(recall.patients[1].units[0].match == LotMatch::not_recorded);
  CHECK(recall.patients[2].units[0].match == LotMatch::not_recorded);
  CHECK(recall.patients[3].units[0].match == LotMatch::recalled);
  const auto all = find_recalled(item, "", records, today);
  CHECK(all.patients.size() == 6);
  CHECK(all.other_lots.empty());
  for (const auto& touched : all.patients) CHECK(touched.units[0].match == LotMatch::recalled);
}

TEST_CASE("Orders are open while a draft, or placed with pieces to come") {
  ItemRecords records;
  records.order_lines = {
      line("draft", OrderState::draft, 2, 0), line("open", OrderState::placed, 5, 2),
      line("full", OrderState::placed, 5, 5), line("cancelled", OrderState::cancelled, 5, 2)};
  const auto recall = find_recalled(item, "A", records, today);
  REQUIRE(recall.orders.size() == 2);
  CHECK(recall.orders[0].order_ref == "draft");
  CHECK(recall.orders[1].order_ref == "open");
  CHECK(recall.touches_anything());
  CHECK_FALSE(find_recalled(item, "A", {}, today).touches_anything());
}

TEST_CASE("Only certain pieces that are not in quarantine yet are moved there, in pairs") {
  ItemRecords records;
  records.shelf = {level("A", "main store", 3), level("A", "Quarantine shelf", 2),
                   level("a", "room 2", 4), level("", "room 2", 5), level("B", "main store", 6)};
  const auto recall = find_recalled(item, "A", records, today);
  CHECK(recall.stock.size() == 4);
  const auto moved = transfers_to_quarantine(recall, "notice 7");
  const Lot lot{item, "A", make_date(2028, 1, 31)};
  CHECK(moved == std::vector<StockMovement>{
                     {lot, "main store", MovementKind::transfer, -3, today, "notice 7"},
                     {lot, "quarantine", MovementKind::transfer, 3, today, "notice 7"}});
  CHECK(transfers_to_quarantine(find_recalled(item, "", records, today), "all").size() == 8);
}

}  // namespace recall_test
