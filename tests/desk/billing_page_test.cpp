#include "desk/billing/billing_page.hpp"

#include <doctest/doctest.h>

#include "desk/billing/answering.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/clinic_folder.hpp"
#include "desk/sample_day.hpp"

namespace billing_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

billing::BillingFinding unbilled() {
  billing::BillingFinding made;
  made.kind = billing::FindingKind::issued_not_billed;
  made.key = "a";
  made.patient = {"P-2"};
  made.side = Side::left;
  made.code = "Z0001";
  made.item = {"C-28"};
  made.since = test_today - days{10};
  made.quantity = 1;
  made.ours = 1;
  made.money = Money{12000, {"EUR"}};
  made.cause = billing::Cause::never_billed;
  made.remedy = billing::Remedy::bill_it;
  made.evidence.units = {3};
  return made;
}

billing::BillingFinding dear() {
  billing::BillingFinding made;
  made.kind = billing::FindingKind::price_differs;
  made.key = "b";
  made.supplier = {"Tern"};
  made.reference = "O-7";
  made.item = {"A-28"};
  made.since = test_today - days{60};
  made.quantity = 2;
  made.money = Money{-400, {"EUR"}};
  made.our_amount = Money{1000, {"EUR"}};
  made.their_amount = Money{1200, {"EUR"}};
  made.remedy = billing::Remedy::ask_supplier;
  return made;
}

BillingAnswer given(Answer what, const billing::BillingFinding& to) {
  BillingAnswer answer;
  answer.finding = to.key;
  answer.answer = what;
  answer.reason = "the supplier agreed";
  answer.answered_by = "Bea";
  answer.answered_on = test_today - days{2};
  answer.quantity = to.quantity;
  answer.money = to.money;
  return answer;
}

struct Shown {
  DayPtr day = std::make_shared<const Day>(test_assessment());
  BillingPage page;

  explicit Shown(const std::vector<BillingAnswer>& answers = {}) {
    page.show(day, std::make_shared<const std::vector<billing::WorkItem>>(
                       billing::make_worklist({unbilled(), dear()}, answers, test_today)));
  }
};

}  // namespace

TEST_CASE("the page lists what is to do, with whom it is about, money and age") {
  Shown shown;
  REQUIRE(shown.page.table().size() == 2);
  const auto& cells = shown.page.table().at(0).cells;
  CHECK(cells[0].text == "Issued, not billed");
  CHECK(cells[1].text == "P-2  Bo Wren");
  CHECK(cells[2].text == "Z0001  C-28");
  CHECK(cells[3].text == "120.00 EUR");
  CHECK(cells[4].text == "10 days");
  CHECK(shown.page.table().at(1).cells[1].text == "O-7, Tern");
  CHECK(shown.page.summary() ==
        "2 findings are open: 120.00 EUR to receive and 4.00 EUR to give back or charged too "
        "much.");
}

TEST_CASE("what is settled or waits leaves the list, and can be shown") {
  Shown shown{{given(Answer::accepted, dear())}};
  CHECK(shown.page.table().size() == 1);
  CHECK(shown.page.summary() == "1 finding is open: 120.00 EUR to receive. 1 is settled.");
  shown.page.show_only(BillingPage::Shown::settled, {});
  REQUIRE(shown.page.table().size() == 1);
  CHECK(shown.page.table().at(0).cells[5].text == "Accepted 23 Nov");
  shown.page.show_only(BillingPage::Shown::all, billing::Book::claims);
  CHECK(shown.page.table().size() == 1);
  shown.page.show_only(BillingPage::Shown::waiting, {});
  CHECK(shown.page.table().size() == 0);
  CHECK(shown.page.empty_words() == "No finding answers to what you asked for.");
}

TEST_CASE("a finding shows both sides, why it is likely so and what settles it") {
  Shown shown;
  const auto detail = shown.page.detail("a");
  CHECK(detail.title == "Issued, not billed: P-2  Bo Wren");
  CHECK(detail.what ==
        "1 piece of Z0001 (C-28) handed out on 15 Nov 2026 for the left side and not billed.");
  CHECK(detail.settling ==
        "Nothing of this code was billed near that day. Bill it, or record why it is not billed.");
  REQUIRE(detail.sides.ours.lines.size() == 1);
  CHECK(detail.sides.ours.lines[0] == "P-2, left: C-28, lot LOT-S4, serial S4, issued 15 Nov 2026");
  CHECK(detail.sides.theirs.title == "Billed");
  CHECK(detail.sides.theirs.lines.empty());
}

TEST_CASE("an answer that no longer fits is said to be so") {
  auto answer = given(Answer::written_off, unbilled());
  answer.quantity = 2;
  Shown shown{{answer}};
  REQUIRE(shown.page.table().size() == 2);
  CHECK(shown.page.table().at(0).cells[5].text == "Written off 23 Nov; changed since");
  CHECK(shown.page.table().at(0).strong);
  CHECK(shown.page.detail("a").history.find("no longer stands") != std::string::npos);
}

TEST_CASE("without compared books the page says so") {
  BillingPage page;
  CHECK(page.empty_words() == "Open a clinic file to see its books.");
  page.show(std::make_shared<const Day>(test_assessment()), nullptr);
  CHECK(page.empty_words() == "The books have not been compared yet.");
}

TEST_CASE("every kind of finding has a sentence, every cause and remedy its words and key") {
  for (int kind = 0; kind <= static_cast<int>(billing::FindingKind::warranty_due); ++kind) {
    auto finding = unbilled();
    finding.kind = static_cast<billing::FindingKind>(kind);
    CAPTURE(kind);
    CHECK(finding_sentence(finding).ends_with("."));
    CHECK(finding_title(finding.kind).size() > 5);
  }
  for (int cause = 1; cause <= static_cast<int>(billing::Cause::not_recorded); ++cause) {
    auto finding = unbilled();
    finding.cause = static_cast<billing::Cause>(cause);
    CHECK(cause_words(finding).ends_with("."));
    CHECK(!cause_key(finding.cause).empty());
  }
  for (int remedy = 0; remedy <= static_cast<int>(billing::Remedy::correct_record); ++remedy) {
    auto finding = unbilled();
    finding.remedy = static_cast<billing::Remedy>(remedy);
    CHECK(remedy_words(finding).ends_with("."));
    CHECK(!remedy_key(finding.remedy).empty());
  }
}

TEST_CASE("answers need a reason, a name and a day that is to come") {
  const auto store = test::empty_store();
  const auto work = store->begin_write({"tester", "answer"});
  const auto refused = [&](const AnswerRequest& request) {
    const auto made = answer_finding(*work, unbilled(), request, test_today);
    REQUIRE(!made);
    return made.error().sentence;
  };
  CHECK(refused({Answer::accepted, "", "Bea", {}}).starts_with("Say why"));
  CHECK(refused({Answer::accepted, "right", "", {}}).starts_with("Say who"));
  CHECK(refused({Answer::accepted, "right", "Bea", test_today + days{9}})
            .starts_with("A day to ask again"));
  CHECK(refused({Answer::asked, "the payer", "Bea", test_today}).find("not after today") !=
        std::string::npos);
  CHECK(refused({Answer::open_again, "no", "Bea", {}}).starts_with("The finding is open already"));
  CHECK(work->all<BillingAnswer>().empty());
  const auto asked =
      answer_finding(*work, unbilled(), {Answer::asked, "the payer", "Bea", {}}, test_today);
  REQUIRE(asked);
  CHECK(asked->number == 1);
  CHECK(asked->money == Money{12000, {"EUR"}});
  const auto open =
      answer_finding(*work, unbilled(), {Answer::open_again, "no", "Bea", {}}, test_today);
  REQUIRE(open);
  CHECK(open->number == 2);
  CHECK(answer_words(*asked) == "Asked on 25 Nov 2026 by Bea: the payer.");
}

TEST_CASE("a paper is put on record once for each alike part of an issue") {
  test::ClinicFolder folder;
  test::write_full_folder(folder);
  const auto store = test::empty_store();
  REQUIRE(test::import(*store, folder.path()).clean());
  const auto work = store->begin_write({"tester", "paper"});
  PaperRequest request{"P1", {}, "SK-1", "", "", {}, "order", make_date(2025, 1, 5), "", "Anna"};
  const auto noted = note_paper(*work, request, test_today);
  REQUIRE(noted);
  CHECK(noted->size() == 3);
  CHECK(!note_paper(*work, request, test_today));
  request.item = "LN-1";
  CHECK(note_paper(*work, request, test_today).error().sentence.find("name the side and the day") !=
        std::string::npos);
  request.serial = "S1";
  CHECK(note_paper(*work, request, test_today));
  request.dated_on = test_today + days{1};
  CHECK(!note_paper(*work, request, test_today));
  request.item = "PN-1";
  request.dated_on = test_today;
  CHECK(note_paper(*work, request, test_today).error().sentence.find("No such part") == 0);
}

}  // namespace billing_page_test
