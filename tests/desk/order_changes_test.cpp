#include "desk/order_changes.hpp"

#include <filesystem>

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"
#include "desk/order_book.hpp"
#include "desk/order_drafts.hpp"
#include "desk/order_revisions.hpp"
#include "desk/revision_lines.hpp"
#include "desk/write_orders.hpp"

namespace order_changes_test {

using namespace sparewell;
using namespace sparewell::desk;
using namespace sparewell::test;

namespace {

const Desk at_work{import_day(), "tester"};
const store::Author author{"tester", "a test"};
constexpr auto no_day = std::nullopt;

/// A draft of supplier Tern: 6 of L-1 at 100.00 for two patients among others, and 2 of S-1
/// at 5.00; and an order PO-1 that was imported.
struct Ordering {
  Ordering() {
    folder.write("suppliers.csv", "supplier\nTern\nAuk\n");
    folder.write("catalogue.csv",
                 "item_code,description,kind,material,supplier,supplier_item,lead_days,unit_cost,"
                 "currency\n"
                 "L-1,Liner,liner,silicone,Tern,T-77,10,100.00,EUR\n"
                 "S-1,Sock,sock,fabric,Tern,T-78,10,5.00,EUR\n"
                 "V-1,Valve,valve,other,Auk,V 1,,20.00,EUR\n");
    folder.write("orders.csv",
                 "supplier,order_ref,item_code,ordered_on,quantity,received_on,received_quantity\n"
                 "Tern,PO-1,L-1,2026-10-01,10,2026-10-20,2\n"
                 "Auk,PO-1,V-1,2026-10-01,1,,\n");
    import(*store, folder.path());
    const auto work = store->begin_write(author);
    for (const char* ref : {"P-1", "P-2"}) {
      Patient patient;
      patient.ref = {ref};
      work->put(patient);
    }
    work->commit();
    auto liner = line("L-1", 6, 10000);
    liner.reason.patient_ordered = true;
    liner.reason.needs.push_back({{"P-1"}, Side::left, 0, 0.5, 0, import_day() + days{30}, {}, {}});
    liner.reason.reserved_for.push_back({"P-2"});
    const auto sock = line("S-1", 2, 500);
    number = keep_as_drafts(*store, {{{"Tern"}, {&liner, &sock}}}, import_day(), author).front();
  }
  static supply::ProposalLine line(const std::string& item, int quantity, int cost) {
    supply::ProposalLine made;
    made.supplier = {"Tern"};
    made.item = {item};
    made.quantity = quantity;
    made.unit_cost = Money{cost, {"EUR"}};
    made.reason.lead_days = 10;
    return made;
  }
  void limit(int euros) const {
    const auto work = store->begin_write(author);
    auto settings = work->settings();
    settings.approval_above = Money{euros * 100, {"EUR"}};
    work->save(settings);
    work->commit();
  }
  void receive(const std::string& item, int pieces) const {
    const auto work = store->begin_write(author);
    for (const auto& row : work->lines_of_order(number)) {
      if (row.record.item.text != item) continue;
      auto changed = row.record;
      changed.received_quantity += pieces;
      work->put_instead(row.id, changed);
    }
    work->commit();
  }
  [[nodiscard]] OrderName name() const { return {number, ""}; }
  [[nodiscard]] OrderView view() const {
    for (auto& one : order_views(store::load_clinic(*store->read()), import_day())) {
      if (one.order.ref == number) return one;
    }
    throw std::logic_error("no such order");
  }
  [[nodiscard]] std::vector<KeptRevision> revisions() const {
    return revisions_of(*store->read(), view().order);
  }
  [[nodiscard]] Expected<OrderChanged> amend(LineAmendment line, const std::string& why = "asked",
                                             const std::string& approved_by = {}) const {
    return amend_order(*store, name(), {{std::move(line)}, why, approved_by}, at_work);
  }

  ClinicFolder folder;
  std::unique_ptr<store::Store> store = empty_store();
  std::string number;
};

LineAmendment quantity(const std::string& item, int pieces) {
  return {{item}, 0, pieces, false, {}};
}

LineAmendment drop(const std::string& item) {
  return {{item}, 0, {}, true, {}};
}

std::string refusal(const Expected<OrderChanged>& made) {
  REQUIRE_FALSE(made.has_value());
  return made.error().sentence;
}

using Life = supply::OrderStage;

}  // namespace

TEST_CASE("A draft keeps whom its pieces are for, and placing it keeps the first revision") {
  const Ordering given;
  CHECK(given.view().stage == Life::draft);
  CHECK(given.view().order.pieces.size() == 2);
  CHECK(given.revisions().empty());
  const auto placed = place_order(*given.store, given.name(), at_work);
  REQUIRE(placed.has_value());
  CHECK(given.view().stage == Life::placed);
  CHECK(given.view().order.header->placed_on == import_day());
  const auto revisions = given.revisions();
  REQUIRE(revisions.size() == 1);
  CHECK(revisions[0].head.made_by == "tester");
  CHECK(revisions[0].lines.size() == 2);
  CHECK(revisions[0].lines[0].for_patients == std::vector<std::string>{"P-1 left", "P-2"});
  CHECK(refusal(place_order(*given.store, given.name(), at_work)).find("is placed") !=
        std::string::npos);
}

TEST_CASE("An order above the limit is placed only after a named person approved it") {
  const Ordering given;
  given.limit(609);
  CHECK(given.view().stage == Life::waiting_for_approval);
  CHECK(refusal(place_order(*given.store, given.name(), at_work)).find("610.00 EUR") !=
        std::string::npos);
  CHECK_FALSE(approve_order(*given.store, given.name(), "", at_work).has_value());
  CHECK(approve_order(*given.store, given.name(), "A person", at_work).has_value());
  CHECK(given.view().order.header->approved_by == "A person");
  CHECK(place_order(*given.store, given.name(), at_work).has_value());

  CHECK(refusal(given.amend(quantity("S-1", 3))).find("Name who approved") != std::string::npos);
  CHECK(given.view().order.lines[1].quantity == 2);
  CHECK(given.revisions().size() == 1);
  CHECK(given.amend(quantity("S-1", 3), "more", "Another person").has_value());
  CHECK(given.view().order.header->approved_by == "Another person");
  CHECK(given.view().order.header->approved_sum == Money{61500, {"EUR"}});
  CHECK(given.amend(quantity("L-1", 5)).has_value());
}

TEST_CASE("Orders that wait for approval are not sent, the others are") {
  const Ordering given;
  given.limit(609);
  const auto sent = mark_as_sent(*given.store, {given.number}, import_day(), author);
  CHECK(sent.placed.empty());
  REQUIRE(sent.waiting.size() == 1);
  CHECK(sent.waiting[0].find(given.number) != std::string::npos);
  given.limit(610);
  CHECK(mark_as_sent(*given.store, {given.number}, import_day(), author).placed.size() == 1);
}

TEST_CASE("A draft is simply changed; a placed order gets a revision with who, when and why") {
  const Ordering given;
  REQUIRE(given.amend(quantity("L-1", 4), "").has_value());
  CHECK(given.view().revision() == 1);
  CHECK(given.revisions().empty());
  REQUIRE(place_order(*given.store, given.name(), at_work).has_value());
  CHECK_FALSE(given.amend(quantity("L-1", 5), "").has_value());
  const auto made = given.amend(quantity("L-1", 5), "one more patient");
  REQUIRE(made.has_value());
  CHECK(made->revision == 2);
  REQUIRE(given.amend(drop("S-1"), "not needed").has_value());
  REQUIRE(given.amend(quantity("V-1", 1), "one more").has_value());
  auto promised = LineAmendment{{"L-1"}, 0, {}, false, import_day() + days{20}};
  REQUIRE(given.amend(promised, "the supplier wrote").has_value());
  const auto revisions = given.revisions();
  REQUIRE(revisions.size() == 5);
  CHECK(revisions[0].lines[0].quantity == 4);
  CHECK(revisions[1].lines[0].quantity == 5);
  CHECK(revisions[1].head.why == "one more patient");
  CHECK(revisions[1].head.made_on == import_day());
  CHECK(revisions[2].lines.size() == 1);
  CHECK(revisions[3].lines.size() == 2);
  CHECK(revisions[3].lines[1].unit_cost == Money{2000, {"EUR"}});
  CHECK(revisions[4].lines[0].promised_on == import_day() + days{20});
  CHECK(given.view().expected[0]->expected_on == import_day() + days{20});
}

TEST_CASE("A dropped line can be taken up again") {
  const Ordering given;
  REQUIRE(given.amend(drop("S-1")).has_value());
  CHECK(given.view().order.ordered() == 6);
  REQUIRE(given.amend(quantity("S-1", 4)).has_value());
  CHECK(given.view().order.ordered() == 10);
  CHECK(given.view().order.lines.size() == 2);
}

TEST_CASE("What has come bounds what can be reduced, and stays when the rest is cancelled") {
  const Ordering given;
  REQUIRE(place_order(*given.store, given.name(), at_work).has_value());
  given.receive("L-1", 4);
  CHECK(given.view().stage == Life::partly_received);
  CHECK(refusal(given.amend(quantity("L-1", 3))).find("4 pieces") != std::string::npos);
  REQUIRE(given.amend(quantity("L-1", 5)).has_value());
  REQUIRE(given.amend(drop("L-1")).has_value());
  CHECK(given.view().order.lines[0].quantity == 4);
  CHECK(given.view().order.lines[0].outstanding() == 0);
  CHECK_FALSE(cancel_order(*given.store, given.name(), "", at_work).has_value());
  const auto cancelled = cancel_order(*given.store, given.name(), "too late", at_work);
  REQUIRE(cancelled.has_value());
  CHECK(cancelled->sentence.find("4 pieces had come and stay") != std::string::npos);
  CHECK(given.view().stage == Life::cancelled);
  CHECK(given.view().order.received() == 4);
  CHECK(given.view().order.header->cancelled_why == "too late");
  CHECK_FALSE(given.amend(quantity("L-1", 9)).has_value());
  CHECK_FALSE(cancel_order(*given.store, given.name(), "again", at_work).has_value());
}

TEST_CASE("Cancelling a whole order is a revision, whose lines say what was dropped") {
  const Ordering given;
  REQUIRE(place_order(*given.store, given.name(), at_work).has_value());
  const auto cancelled = cancel_order(*given.store, given.name(), "too late", at_work);
  REQUIRE(cancelled.has_value());
  CHECK(cancelled->revision == 2);
  const auto kept = given.revisions();
  REQUIRE(kept.size() == 2);
  CHECK(kept[1].head.why == "cancelled: too late");
  CHECK(kept[1].lines.empty());
  const auto lines = revision_lines(kept[1].lines, &kept[0].lines);
  REQUIRE(lines.size() == kept[0].lines.size());
  for (const auto& line : lines) {
    CHECK(line.dropped);
    CHECK(line.change == "dropped");
  }
  const auto out = given.folder.path() / "again";
  const auto refused = reprint_order(*given.store->read(), given.name(), 0, out);
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().sentence.find("has no lines to print") != std::string::npos);
  CHECK(reprint_order(*given.store->read(), given.name(), 1, out).has_value());
}

TEST_CASE("A revision says what it changed, line by line") {
  OrderRevisionLine liner;
  liner.item = {"L-1"};
  liner.quantity = 3;
  liner.unit_cost = Money{10000, {"EUR"}};
  OrderRevisionLine sock = liner;
  sock.item = {"S-1"};
  const std::vector<OrderRevisionLine> before{liner, sock};
  CHECK(revision_lines(before, nullptr)[0].change.empty());
  liner.quantity = 5;
  liner.promised_on = import_day();
  liner.for_patients = {"P-1 left"};
  OrderRevisionLine valve = sock;
  valve.item = {"V-1"};
  const auto lines = revision_lines({liner, valve}, &before);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].change.find("5 instead of 3 pieces; ") == 0);
  CHECK(lines[0].change.find("instead of no day promised") != std::string::npos);
  CHECK(lines[0].change.find("for P-1 left instead of stock") != std::string::npos);
  CHECK(lines[1].change == "added");
  CHECK(lines[2].line.item.text == "S-1");
  CHECK(lines[2].dropped);
  const auto rows = revision_rows(lines);
  CHECK(rows[2].cells[1].text == "none");
  CHECK(rows[0].strong);
}

TEST_CASE("A line on back-order is expected when the supplier promised it") {
  const Ordering given;
  CHECK_FALSE(back_order(*given.store, given.name(), {"L-1"}, no_day, "", at_work).has_value());
  REQUIRE(place_order(*given.store, given.name(), at_work).has_value());
  const Date later = import_day() + days{40};
  CHECK_FALSE(back_order(*given.store, given.name(), {"L-1"}, import_day() - days{1}, "", at_work)
                  .has_value());
  CHECK_FALSE(back_order(*given.store, given.name(), {"V-1"}, later, "", at_work).has_value());
  REQUIRE(back_order(*given.store, given.name(), {"L-1"}, later, "", at_work).has_value());
  const auto view = given.view();
  CHECK(view.revision() == 2);
  CHECK(view.expected[0]->on_back_order);
  CHECK(view.expected[0]->expected_on == later);
  CHECK_FALSE(view.expected[1]->on_back_order);
  CHECK(view_stage_words(view) == "placed, rest on back-order");
  CHECK(line_state_words(view, 0).starts_with("on back-order, promised "));
}

TEST_CASE("An imported order goes on working, and is kept as it was before its first amendment") {
  const Ordering given;
  const OrderName both{"PO-1", ""};
  const OrderName one{"PO-1", "Tern"};
  const Amendment amendment{{quantity("L-1", 8)}, "fewer", ""};
  CHECK(refusal(amend_order(*given.store, both, amendment, at_work)).find("name the supplier") !=
        std::string::npos);
  CHECK_FALSE(amend_order(*given.store, {"PO-9", ""}, amendment, at_work).has_value());
  REQUIRE(amend_order(*given.store, one, amendment, at_work).has_value());
  const auto snapshot = given.store->read();
  const auto kept = revisions_of(*snapshot, find_order(*snapshot, one)->order);
  REQUIRE(kept.size() == 2);
  CHECK(kept[0].lines[0].quantity == 10);
  CHECK(kept[1].lines[0].quantity == 8);
}

TEST_CASE("The number of a cancelled draft is not given out again") {
  const Ordering given;
  REQUIRE(cancel_order(*given.store, given.name(), "not needed", at_work).has_value());
  const auto sock = Ordering::line("S-1", 2, 500);
  const auto again = keep_as_drafts(*given.store, {{{"Tern"}, {&sock}}}, import_day(), author);
  CHECK(again.front() != given.number);
}

TEST_CASE("Any revision can be written again as it was, in a file of its own") {
  const Ordering given;
  const auto out = given.folder.path() / "again";
  CHECK_FALSE(reprint_order(*given.store->read(), given.name(), 0, out).has_value());
  REQUIRE(place_order(*given.store, given.name(), at_work).has_value());
  const auto first = purchase_order_of(given.revisions()[0]);
  {
    const auto work = given.store->begin_write(author);
    auto item = work->item({"L-1"});
    item->record.description = "Renamed";
    work->put_instead(item->id, item->record);
    work->commit();
  }
  REQUIRE(given.amend(quantity("L-1", 5)).has_value());
  const auto kept = given.revisions();
  CHECK(purchase_order_of(kept[0]).lines == first.lines);
  CHECK(purchase_order_of(kept[0]).lines[0].description == "Liner");
  CHECK(purchase_order_of(kept[1]).lines[0].description == "Renamed");
  using Pieces = std::vector<PieceForPatient>;
  CHECK(first.lines[0].for_patients == Pieces{{{"P-1"}, Side::left}, {{"P-2"}, {}}});
  const auto old = reprint_order(*given.store->read(), given.name(), 1, out);
  const auto latest = reprint_order(*given.store->read(), given.name(), 0, out);
  REQUIRE(old.has_value());
  REQUIRE(latest.has_value());
  CHECK(latest->revision == 2);
  CHECK(old->file != latest->file);
  CHECK(std::filesystem::exists(old->file));
  CHECK_FALSE(reprint_order(*given.store->read(), given.name(), 3, out).has_value());
}

}  // namespace order_changes_test
