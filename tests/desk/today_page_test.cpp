// The page "Today" on small made-up clinics. What is to be told is the page's own description of
// itself; figures are counted by hand from the records beside them.
#include "desk/today/today_page.hpp"

#include <algorithm>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "desk/sample_day.hpp"
#include "desk/today/billing_today.hpp"
#include "desk/today/orders_today.hpp"
#include "desk/today/patient_needs.hpp"
#include "desk/today/patients_today.hpp"
#include "desk/today/shelf_today.hpp"

namespace today_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

using To = Destination::To;

DayPtr day_of(Assessment assessment, wear::Surprises surprises = {}) {
  return std::make_shared<const Day>(std::move(assessment), std::move(surprises));
}

const TodayRow* find(const std::vector<TodayRow>& rows, const std::string& title) {
  const auto found = std::ranges::find(rows, title, &TodayRow::title);
  return found == rows.end() ? nullptr : &*found;
}

StockLevel lot(const std::string& item, const std::string& name, const std::string& place,
               int pieces, std::optional<Date> use_by) {
  return {{{item}, name, use_by}, place, pieces};
}

OrderLine ordered(const std::string& ref, OrderState state, int days_ago) {
  OrderLine line;
  line.supplier = {"Tern"};
  line.order_ref = ref;
  line.item = {"A-28"};
  line.ordered_on = test_today - days{days_ago};
  line.quantity = 2;
  line.state = state;
  return line;
}

billing::WorkItem finding(billing::FindingKind kind, const std::string& key, std::int64_t cents) {
  billing::WorkItem item;
  item.finding.kind = kind;
  item.finding.key = key;
  item.finding.money = Money{cents, {"EUR"}};
  item.age_days = 20;
  return item;
}

WorklistPtr worklist(std::vector<billing::WorkItem> items) {
  return std::make_shared<const std::vector<billing::WorkItem>>(std::move(items));
}

}  // namespace

TEST_CASE("Orders that are due stand in one row a supplier, with lines and money") {
  auto assessment = test_assessment();
  assessment.proposal = {test_line("B-28", "Auk", 1, {}), test_line("A-28", "Tern", 2, 10000),
                         test_line("C-28", "Tern", 1, 5050)};
  assessment.held = {{test_line("A-28", "Auk", 2, 10000), supply::HeldFor::budget}};
  const auto rows = orders_today(*day_of(std::move(assessment)));
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].sentence == "1 line is to be ordered today from Auk, 1 line without a price.");
  // 2 x 100.00 + 50.50
  CHECK(rows[1].sentence == "2 lines are to be ordered today from Tern, 250.50 EUR.");
  CHECK(rows[1].urgency == Urgency::today);
  CHECK(rows[1].destination.to == To::order_lines);
  CHECK(rows[1].destination.item == ItemCode{"A-28"});
  CHECK(rows[2].sentence == "The budget leaves nothing for 1 line that is needed: A-28.");
  CHECK(rows[2].destination.then == Command::held_back);
}

TEST_CASE("Drafts and late orders are overdue, and lead to what is done with them") {
  auto assessment = test_assessment();
  assessment.clinic.order_lines = {ordered("O-1", OrderState::draft, 3),
                                   ordered("O-2", OrderState::placed, 200),
                                   ordered("O-3", OrderState::placed, 7)};
  const auto rows = orders_today(*day_of(std::move(assessment)));
  const auto* drafts = find(rows, "Not marked as sent");
  REQUIRE(drafts != nullptr);
  CHECK(drafts->urgency == Urgency::overdue);  // written three days ago
  CHECK(drafts->sentence == "1 order was written and is not marked as sent: O-1 for Tern.");
  CHECK(drafts->destination.then == Command::mark_as_sent);
  const auto* late = find(rows, "Late orders");
  REQUIRE(late != nullptr);
  CHECK(late->urgency == Urgency::overdue);
  CHECK(late->destination.order->ref == "O-2");
  const auto* coming = find(rows, "Deliveries expected");  // quoted 10 days, ordered 7 days ago
  REQUIRE(coming != nullptr);
  CHECK(coming->urgency == Urgency::this_week);
  CHECK(coming->destination.order->ref == "O-3");
}

TEST_CASE("A booking that nothing can serve leads to its patient; one that is served is not told") {
  auto assessment = test_assessment();
  assessment.clinic.reservations = {{{"P-2"}, {"C-28"}, "main store", 1, test_today},
                                    {{"P-1"}, {"A-28"}, "main store", 1, test_today + days{3}}};
  assessment.clinic.shelf = {lot("A-28", "L1", "main store", 1, {})};
  const auto rows = orders_today(*day_of(std::move(assessment)));
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].title == "Booked and not there");
  CHECK(rows[0].urgency == Urgency::today);
  CHECK(rows[0].destination.to == To::patient);
  CHECK(rows[0].destination.patient == PatientRef{"P-2"});
}

TEST_CASE("Expired lots, lots to be used soon and overdue loans are told from the shelf") {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  clinic.shelf = {lot("A-28", "OLD", "main store", 2, test_today - days{1}),
                  lot("B-28", "SOON", "main store", 3, test_today + days{30}),
                  lot("C-28", "FRESH", "main store", 3, test_today + days{400}),
                  lot("C-28", "HELD", "quarantine", 1, {})};
  clinic.places = {{"quarantine", PlaceSort::quarantine, ""}};
  Loan loan;
  loan.number = 4;
  loan.patient = {"P-1"};
  loan.lot = {{"A-28"}, "L9", std::nullopt};
  loan.quantity = 1;
  loan.due_on = test_today - days{2};
  clinic.loans = {loan};
  const auto rows = shelf_today(*day_of(std::move(assessment)));
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].sentence == "1 lot, 2 pieces, is past its use-by date: A-28 lot OLD.");
  CHECK(rows[0].urgency == Urgency::overdue);
  CHECK(rows[0].destination.item == ItemCode{"A-28"});
  CHECK(rows[0].destination.lot == "OLD");
  CHECK(rows[0].destination.then == Command::stock_write_off);
  CHECK(rows[1].title == "To be used soon");
  CHECK(rows[1].urgency == Urgency::this_week);
  CHECK(rows[2].title == "In quarantine");
  CHECK(rows[3].title == "Loans to be settled");
  CHECK(rows[3].urgency == Urgency::overdue);
  CHECK(rows[3].destination.row == "loan 4");
  CHECK(rows[3].destination.then == Command::stock_settle);
}

TEST_CASE("A patient stands in one row with every reason, the most urgent first") {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  clinic.patients[0].next_visit = test_today;
  clinic.items[0].shelf_life_days = 50;  // of a part handed out 100 days ago
  Reaction reaction;
  reaction.patient = {"P-1"};
  reaction.began_on = test_today - days{9};
  clinic.reactions = {reaction};
  const auto rows = patients_today(*day_of(std::move(assessment)));
  REQUIRE(!rows.empty());
  CHECK(rows[0].id == "patient P-1");
  CHECK(rows[0].urgency == Urgency::overdue);
  CHECK(
      rows[0].sentence.starts_with("P-1  Ana Fieldmouse comes today: right A-28 is past its "
                                   "use-by date, 6 Oct 2026"));
  CHECK(rows[0].sentence.find("a reaction of the skin since 16 Nov 2026") != std::string::npos);
  CHECK(rows[0].destination.to == To::patient);
  CHECK(rows[0].destination.unit == 0u);
}

TEST_CASE("A part likely worn out where no visit is planned is told, not passed over") {
  auto assessment = test_assessment();
  // Of parts that reach 600 days half reach 638: 400 * ((600/400)^3 + ln 2)^(1/3), by hand.
  assessment.clinic.patients[0].next_visit.reset();
  assessment.lives[1].life = {test_today, 600.0, 3.0, 400.0, {{test_today, 1.0}}};
  const auto needs = patient_needs(*day_of(std::move(assessment)));
  const auto first = std::ranges::find(needs, PatientRef{"P-1"}, &PatientNeeds::patient);
  REQUIRE(first != needs.end());
  CHECK(std::ranges::any_of(first->reasons, [](const PatientReason& reason) {
    return reason.words == "no visit is planned, and left B-28 is likely worn out within 60 days" &&
           reason.unit == 1u;
  }));
}

TEST_CASE("Of many patients the most pressing are told, and one row stands for the others") {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  clinic.units.clear();
  assessment.lives.clear();
  clinic.patients.clear();
  for (int i = 0; i < 53; ++i) {
    const PatientRef ref{fmt::format("Q-{:02}", i)};
    clinic.patients.push_back({ref, "", "", std::nullopt, std::nullopt});
    Reaction reaction;
    reaction.patient = ref;
    reaction.began_on = test_today;
    clinic.reactions.push_back(reaction);
  }
  clinic.patients[50].next_visit = test_today;
  const auto rows = patients_today(*day_of(std::move(assessment)));
  REQUIRE(rows.size() == 1 + most_patients + 1);
  CHECK(rows[0].id == "patient Q-50");
  CHECK(rows[0].urgency == Urgency::today);
  CHECK(rows.back().sentence == "And 40 more patients, less pressing than those above.");
  CHECK(rows.back().destination.to == To::findings);
  CHECK(rows.back().destination.patient.empty());
}

TEST_CASE("A lot with more early endings than chance brings leads to the early endings") {
  wear::EarlyEndings early;
  early.item = {"A-28"};
  early.lot = "L7";
  early.units = 9;
  early.early = 6;
  early.flagged = true;
  wear::Surprises surprises;
  surprises.lots = {early};
  const auto rows = patients_today(*day_of(test_assessment(), std::move(surprises)));
  REQUIRE(find(rows, "Early endings") != nullptr);
  CHECK(find(rows, "Early endings")->destination.then == Command::wear_early);
}

TEST_CASE("Billing tells findings by kind with their money, and whom to ask again") {
  using billing::FindingKind;
  const auto day = day_of(test_assessment());
  auto asked = finding(FindingKind::denied, "d1", 7000);
  asked.ask_again = true;
  auto settled = finding(FindingKind::denied, "d2", 9900);
  settled.state = billing::WorkState::settled;
  auto waiting = finding(FindingKind::denied, "d3", 9900);
  waiting.state = billing::WorkState::waiting;
  const auto rows = billing_today(
      *day, worklist({finding(FindingKind::issued_not_billed, "i1", 10000),
                      finding(FindingKind::issued_not_billed, "i2", 25050), asked, settled, waiting,
                      finding(FindingKind::price_differs, "p1", -300)}));
  const auto* unbilled = find(rows, "Issued, not billed");
  REQUIRE(unbilled != nullptr);
  CHECK(unbilled->sentence == "2 findings, the oldest 20 days old: 350.50 EUR to receive.");
  CHECK(unbilled->urgency == Urgency::today);
  CHECK(unbilled->destination.row == "i2");  // the larger sum
  CHECK(!unbilled->destination.then);
  const auto* again = find(rows, "Ask again");
  REQUIRE(again != nullptr);
  CHECK(again->urgency == Urgency::overdue);
  CHECK(again->destination.row == "d1");
  CHECK(again->destination.then == Command::answer_finding);
  CHECK(find(rows, "Price differs")->urgency == Urgency::this_week);
  CHECK(find(rows, "Denied") == nullptr);
  // October was lived through and not closed: parts were handed out in it or before.
  CHECK(find(rows, "Month to close") != nullptr);
}

TEST_CASE("The page says what is to be done, and of each job that there is nothing") {
  TodayPage page;
  CHECK(page.headline() == "Open a clinic file to see what needs a person today.");
  Assessment empty;
  empty.today = test_today;
  const auto day = day_of(std::move(empty));
  page.show(day, find_work(*day));
  page.show_books(TodayPage::Books::comparing, nullptr);
  REQUIRE(page.table().size() == 3);
  CHECK(page.table().at(2).cells[3].text.starts_with("The books are being compared"));
  CHECK(page.count() == 0);
  page.show_books(TodayPage::Books::not_compared, nullptr);
  CHECK(page.destination("books")->then == Command::compare_books);
  page.show_books(TodayPage::Books::compared, worklist({}));
  REQUIRE(page.table().size() == 3);
  CHECK(page.table().at(0).cells[2].text == "Nothing to do");
  CHECK(page.detail(page.table().at(0).id).action.empty());
  CHECK(!page.destination(page.table().at(0).id));
  CHECK(page.headline() ==
        "What needs a person: nothing in Ordering and receiving, nothing in Patients and nothing "
        "in Billing; nothing is overdue.");
}

TEST_CASE("The page shows one job, finds words, and keeps the order of jobs and urgency") {
  auto assessment = test_assessment();
  assessment.proposal = {test_line("A-28", "Tern", 2, 10000)};
  assessment.clinic.shelf = {lot("A-28", "OLD", "main store", 2, test_today - days{1})};
  const auto day = day_of(std::move(assessment));
  TodayPage page;
  page.show(day, find_work(*day));
  page.show_books(TodayPage::Books::compared,
                  worklist({finding(billing::FindingKind::denied, "d1", 7000)}));
  CHECK(page.table().at(0).cells[2].text == "Expired lots");
  CHECK(page.table().at(0).strong);
  CHECK(page.table().at(1).cells[2].text == "Order today");
  page.show_only(Work::billing);
  CHECK(page.table().at(0).cells[2].text == "Denied");
  page.show_only({});
  page.table().find("tern");
  REQUIRE(page.table().size() == 1);
  const auto id = page.table().at(0).id;
  CHECK(page.detail(id).title == "Ordering and receiving, Today: Order today");
  CHECK(page.detail(id).action == "Go to today's orders");
  CHECK(page.destination(id)->to == To::order_lines);
}

}  // namespace today_page_test
