#include "desk/deliveries_page.hpp"

#include <doctest/doctest.h>

#include "desk/receive_form.hpp"
#include "desk/sample_day.hpp"

namespace deliveries_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

OrderLine line(const std::string& ref, const std::string& item, int quantity, int received,
               int days_ago, OrderState state = OrderState::placed) {
  OrderLine made;
  made.supplier = {"Tern"};
  made.order_ref = ref;
  made.item = {item};
  made.ordered_on = test_today - days{days_ago};
  made.quantity = quantity;
  made.received_quantity = received;
  if (received > 0) made.received_on = made.ordered_on + days{3};
  made.unit_cost = Money{10000, {"EUR"}};
  made.state = state;
  return made;
}

/// A received order, one long overdue with a back-order, a draft, one waiting, one on its way.
DayPtr day_with_orders() {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  clinic.order_lines = {line("O-1", "A-28", 2, 2, 90), line("O-2", "A-28", 4, 1, 80),
                        line("O-3", "B-28", 1, 0, 0, OrderState::draft),
                        line("O-4", "C-28", 9, 0, 0, OrderState::draft),
                        line("O-5", "B-28", 1, 0, 1)};
  clinic.settings.approval_above = Money{50000, {"EUR"}};
  OrderPromise promise;
  promise.supplier = {"Tern"};
  promise.order_ref = "O-5";
  promise.item = {"B-28"};
  promise.promised_on = test_today + days{9};
  clinic.order_promises = {promise};
  OrderPiece piece;
  piece.supplier = {"Tern"};
  piece.order_ref = "O-2";
  piece.item = {"A-28"};
  piece.patient = {"P-1"};
  piece.side = Side::left;
  clinic.order_pieces = {piece};
  OrderRevision revision;
  revision.supplier = {"Tern"};
  revision.order_ref = "O-2";
  revision.made_on = test_today - days{80};
  revision.made_by = "anna";
  revision.why = "placed";
  clinic.order_revisions = {revision};
  return std::make_shared<const Day>(std::move(assessment));
}

std::string id(const std::string& ref) {
  return "Tern\n" + ref;
}

}  // namespace

TEST_CASE("Orders are listed open first, with the overdue said in words") {
  DeliveriesPage page;
  CHECK(page.empty_words().find("Open a clinic file") == 0);
  page.show(day_with_orders());
  auto& table = page.table();
  REQUIRE(table.size() == 5);
  CHECK(table.at(0).cells[0].text == "O-2");
  CHECK(table.at(0).cells[2].text.ends_with(" days overdue, partly received, rest on back-order"));
  CHECK(table.at(0).strong);
  CHECK(table.at(1).cells[0].text == "O-5");
  CHECK(table.at(1).cells[3].text == "4 Dec 2026");
  CHECK(table.at(4).cells[2].text == "received");
  CHECK(page.count_shown() == "5 orders, 1 overdue");
  table.require(DeliveriesPage::is_open);
  CHECK(table.size() == 4);
  table.find("o-4 waiting");
  REQUIRE(table.size() == 1);
  CHECK(table.at(0).id == id("O-4"));
}

TEST_CASE("What can be done follows from the stage of the order") {
  DeliveriesPage page;
  page.show(day_with_orders());
  CHECK(page.actions(id("O-3")).place);
  CHECK_FALSE(page.actions(id("O-4")).place);
  CHECK(page.actions(id("O-4")).approve);
  CHECK_FALSE(page.actions(id("O-4")).back_order);
  const auto partly = page.actions(id("O-2"));
  CHECK_FALSE(partly.place);
  CHECK(partly.amend);
  CHECK(partly.back_order);
  CHECK(partly.reprint);
  const auto received = page.actions(id("O-1"));
  CHECK_FALSE((received.place || received.amend || received.cancel || received.reprint));
  CHECK_FALSE(page.actions("").amend);
}

TEST_CASE("The detail says what came, what is promised and whom it is for") {
  DeliveriesPage page;
  page.show(day_with_orders());
  const auto detail = page.detail(id("O-2"));
  CHECK(detail.title.starts_with("O-2  Tern: "));
  REQUIRE(detail.lines.size() == 1);
  CHECK(detail.lines[0].cells[3].text == "3");
  CHECK(detail.lines[0].cells[5].text == "P-1 left");
  CHECK(page.detail(id("O-4")).summary.find("500.00 EUR") != std::string::npos);
  CHECK(page.revisions(id("O-2")) ==
        std::vector<std::string>{"Revision 1, 6 Sep 2026, anna: placed"});
  CHECK(page.detail("nothing").title.empty());
}

namespace {

std::vector<Item> catalogue() {
  Item item;
  item.code = {"L-1"};
  item.gtin = "51022222233336";
  Item other;
  other.code = {"L-2"};
  other.gtin = "51022222233343";
  return {item, other};
}

}  // namespace

TEST_CASE("Scans fill the form in, and a further package of the lot adds a piece") {
  const Date day = make_date(2026, 11, 25);
  ReceiveForm form;
  form.order_ref = "PO-1";
  const auto first = with_scan(form, "(01)51022222233336(17)280630(10)B9(21)S1", catalogue(), day);
  REQUIRE_MESSAGE(first, (first ? "" : first.error().sentence));
  CHECK(first->form.item == "L-1");
  CHECK(first->form.lot == "B9");
  CHECK(first->form.use_by == "2028-06-30");
  CHECK(first->form.serials == "S1");
  CHECK(first->form.quantity == "1");
  const auto again =
      with_scan(first->form, "(01)51022222233336(17)280630(10)B9(21)S1", catalogue(), day);
  CHECK(again->form.quantity == "1");  // the same package, scanned twice
  const auto next =
      with_scan(again->form, "(01)51022222233336(17)280630(10)B9(21)S2", catalogue(), day);
  CHECK(next->form.quantity == "2");
  CHECK(next->form.serials == "S1,S2");
  CHECK_FALSE(with_scan(next->form, "(01)51022222233336(17)280630(10)C1", catalogue(), day));
  CHECK_FALSE(with_scan(next->form, "nonsense", catalogue(), day));
}

TEST_CASE("A form that cannot be booked is refused by its field") {
  const auto refusal = [](const ReceiveForm& form) {
    const auto read = read_receive_form(form);
    return read ? std::string{} : read.error().sentence.substr(0, read.error().sentence.find(':'));
  };
  ReceiveForm form;
  CHECK(refusal(form) == "Item");
  form.item = "L-1";
  CHECK(refusal(form) == "Pieces");
  form.quantity = " 3 ";
  CHECK(refusal(form).empty());
  form.damaged = "4";
  CHECK(refusal(form) == "Damaged");
  form.damaged = "1";
  CHECK(refusal(form) == "What is damaged");
  form.damage = "torn";
  form.use_by = "30.6.2028";
  CHECK(refusal(form) == "Use by");
  form.use_by = "2028-06-30";
  form.serials = "S1, S2,";
  form.order_ref = "PO-1";
  form.place = "shelf";
  const auto read = read_receive_form(form);
  REQUIRE(read);
  CHECK(read->serials == std::vector<std::string>{"S1", "S2"});
  CHECK(read->damaged == 1);
  CHECK(next_form(form).order_ref == "PO-1");
  CHECK(next_form(form).place == "shelf");
  CHECK(next_form(form).item.empty());
}

}  // namespace deliveries_page_test
