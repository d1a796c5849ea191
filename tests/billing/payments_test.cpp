#include "billing/payments.hpp"

#include <doctest/doctest.h>

#include "made_payments.hpp"

namespace payments_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

const Date summer = make_date(2026, 8, 3);

/// One claim of 2 pieces for 200.00 and its answer: 160.00 paid, 40.00 contractual.
struct One {
  Clinic clinic;
  ClaimLine& claim;
  RemittanceLine& answer;

  One() : claim{first_of(clinic.claim_lines)}, answer{first_of(clinic.remittance_lines)} {
    claim = claim_line("CL-1", "Z0001", summer, 2, 20000);
    answer = answer_to(claim, "PAY-1", 1);
  }
  /// The references stay good while few are added.
  template <class Record>
  static Record& first_of(std::vector<Record>& records) {
    records.reserve(8);
    return records.emplace_back();
  }
  One(const One&) = delete;
  One& operator=(const One&) = delete;

  std::vector<BillingFinding> findings() {
    if (clinic.remittances.empty()) {
      add_payment(clinic, "Northfield Health", "PAY-1", summer + days{20});
    }
    return reconcile(clinic).findings;
  }
};

}  // namespace

TEST_CASE("a claim that was paid as agreed is no finding") {
  CHECK(One{}.findings().empty());
}

TEST_CASE("a deductible is the patient's and no disagreement") {
  One one;
  one.answer.paid = dollars(0);
  one.answer.adjustments = {"CO:45:40.00", "PR:1:160.00"};
  CHECK(one.findings().empty());
}

TEST_CASE("a denial has its reasons and what is at stake") {
  One one;
  deny(one.answer, "16");
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::denied);
  CHECK(found[0].other == "CO:16");
  CHECK(found[0].money == dollars(16000));  // 2 pieces at the payer's fee of 80.00
  CHECK(found[0].their_amount == dollars(0));
  CHECK(found[0].remedy == Remedy::replace_claim);
  CHECK(found[0].since == summer + days{20});
  CHECK(found[0].evidence.claim_lines == std::vector<std::size_t>{0});
  CHECK(found[0].evidence.remittance_lines == std::vector<std::size_t>{0});
}

TEST_CASE("a payment after a denial settles it") {
  One one;
  const auto paid = one.answer;
  deny(one.answer, "197");
  auto later = paid;
  later.reference = "PAY-2";
  one.clinic.remittance_lines.push_back(later);
  add_payment(one.clinic, "Northfield Health", "PAY-1", summer + days{20});
  add_payment(one.clinic, "Northfield Health", "PAY-2", summer + days{50});
  CHECK(one.findings().empty());
}

TEST_CASE("the denial of what was paid at first is no finding") {
  One one;
  auto twice = one.answer;
  twice.reference = "PAY-2";
  deny(twice, "18");
  one.clinic.remittance_lines.push_back(twice);
  add_payment(one.clinic, "Northfield Health", "PAY-1", summer + days{20});
  add_payment(one.clinic, "Northfield Health", "PAY-2", summer + days{50});
  CHECK(one.findings().empty());
}

TEST_CASE("less than the payer's fee is a disagreement, whatever it is called") {
  One one;
  one.answer.paid = dollars(15000);
  one.answer.adjustments = {"CO:45:50.00"};
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::paid_differently);
  CHECK(found[0].money == dollars(1000));
  CHECK(found[0].our_amount == dollars(16000));
  CHECK(found[0].their_amount == dollars(15000));
}

TEST_CASE("a fee above the charge does not make the clinic's charge wrong") {
  One one;
  one.claim.charge = dollars(15000);
  one.answer.charge = dollars(15000);
  one.answer.paid = dollars(15000);
  one.answer.adjustments.clear();
  CHECK(one.findings().empty());
}

TEST_CASE("without a fee, other adjustments than the contractual are a disagreement") {
  One one;
  one.claim.code = one.answer.code = "Z0002";
  one.answer.paid = dollars(13000);
  one.answer.adjustments = {"CO:45:40.00", "PI:151:30.00"};
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::paid_differently);
  CHECK(found[0].money == dollars(3000));
  CHECK(found[0].other == "PI:151");
  CHECK(found[0].remedy == Remedy::appeal);
}

TEST_CASE("fewer pieces than billed are a disagreement of unknown worth") {
  One one;
  one.claim.code = one.answer.code = "Z0002";
  one.answer.quantity = 1;
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].quantity == 1);
  CHECK(found[0].theirs == 1);
  CHECK_FALSE(found[0].money);
}

TEST_CASE("a payment taken back and not paid anew is still to come") {
  One one;
  one.clinic.remittance_lines.push_back(reversal_of(one.answer, "PAY-2", 1));
  add_payment(one.clinic, "Northfield Health", "PAY-1", summer + days{20});
  add_payment(one.clinic, "Northfield Health", "PAY-2", summer + days{50});
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::paid_differently);
  CHECK(found[0].money == dollars(16000));
  SUBCASE("unless it is paid anew in the same payment") {
    auto anew = answer_to(one.claim, "PAY-2", 2);
    one.clinic.remittance_lines.push_back(anew);
    CHECK(one.findings().empty());
  }
  SUBCASE("or the clinic has taken the claim back itself") {
    auto back = one.claim;
    back.submission = Submission::reversal;
    back.copy = 2;
    one.clinic.claim_lines.push_back(back);
    CHECK(one.findings().empty());
  }
}

TEST_CASE("a second payment has no claim left") {
  One one;
  auto twice = one.answer;
  twice.reference = "PAY-2";
  one.clinic.remittance_lines.push_back(twice);
  add_payment(one.clinic, "Northfield Health", "PAY-1", summer + days{20});
  add_payment(one.clinic, "Northfield Health", "PAY-2", summer + days{50});
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::paid_without_claim);
  CHECK(found[0].cause == Cause::keyed_twice);
  CHECK(found[0].money == dollars(-16000));
}

TEST_CASE("what another payer adds is no second payment") {
  One one;
  one.answer.paid = dollars(12000);
  one.answer.adjustments = {"CO:45:40.00", "PR:2:40.00"};
  auto second = one.answer;
  second.payer = "Second Payer";
  second.status = "2";
  second.paid = dollars(4000);
  second.adjustments = {"OA:23:160.00"};
  one.clinic.remittance_lines.push_back(second);
  add_payment(one.clinic, "Northfield Health", "PAY-1", summer + days{20});
  add_payment(one.clinic, "Second Payer", "PAY-1", summer + days{40});
  CHECK(one.findings().empty());
}

TEST_CASE(
    "a claim without an answer waits for the payer's days, and only where payments are kept") {
  One one;
  auto open = claim_line("CL-2", "Z0002", summer + days{5}, 1, 5000);
  auto open_too = claim_line("CL-2", "Z0003", summer + days{5}, 2, 7000);
  one.clinic.claim_lines.push_back(open);
  one.clinic.claim_lines.push_back(open_too);
  const auto found = One{}.findings();
  CHECK(found.empty());
  const auto unanswered = one.findings();
  REQUIRE(unanswered.size() == 1);
  CHECK(unanswered[0].kind == FindingKind::not_answered);
  CHECK(unanswered[0].reference == "CL-2");
  CHECK(unanswered[0].quantity == 3);
  CHECK(unanswered[0].money == dollars(12000));
  CHECK(unanswered[0].since == summer + days{5});
  CHECK(unanswered[0].other_day == summer + days{35});
  SUBCASE("of no other payer") {
    one.clinic.claim_lines[1].payer = one.clinic.claim_lines[2].payer = "Silent Fund";
    CHECK(one.findings().empty());
  }
  SUBCASE("nor before payments were put on record") {
    one.clinic.claim_lines[1].service_date = summer - days{60};
    one.clinic.claim_lines[2].service_date = summer - days{60};
    CHECK(one.findings().empty());
  }
  SUBCASE("nor where none is kept") {
    one.clinic.remittances.clear();
    one.clinic.remittance_lines.clear();
    CHECK(reconcile(one.clinic).findings.empty());
  }
  SUBCASE("nor what another claim stands in place of") {
    auto instead = claim_line("CL-3", "Z0002", made_today - days{3}, 1, 5000);
    instead.submission = Submission::replacement;
    instead.replaces = "CL-2";
    one.clinic.claim_lines.push_back(instead);
    CHECK(one.findings().empty());
  }
}

TEST_CASE("an entry for a claim as a whole answers all its lines") {
  Clinic clinic;
  clinic.claim_lines = {claim_line("CL-1", "Z0001", summer, 1, 10000),
                        claim_line("CL-1", "Z0002", summer, 1, 5000)};
  RemittanceLine whole;
  whole.payer = "Northfield Health";
  whole.reference = "PAY-1";
  whole.entry = RemittanceEntry::claim;
  whole.claim_ref = "CL-1";
  whole.status = "1";
  whole.charge = dollars(15000);
  whole.paid = dollars(12000);
  whole.adjustments = {"CO:45:30.00"};
  clinic.remittance_lines = {whole};
  add_payment(clinic, "Northfield Health", "PAY-1", summer + days{20});
  CHECK(reconcile(clinic).findings.empty());
  deny(clinic.remittance_lines[0], "29");
  const auto found = reconcile(clinic).findings;
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::denied);
  CHECK(found[0].money == dollars(15000));
  CHECK(found[0].evidence.claim_lines.size() == 2);
}

TEST_CASE("what the patient owes by the claim as a whole is no disagreement") {
  One one;
  RemittanceLine share;
  share.payer = "Northfield Health";
  share.reference = "PAY-1";
  share.position = 2;
  share.entry = RemittanceEntry::claim;
  share.claim_ref = "CL-1";
  share.status = "1";
  share.charge = dollars(0);
  share.paid = dollars(-3000);
  share.adjustments = {"PR:1:30.00"};
  one.clinic.remittance_lines.push_back(share);
  CHECK(one.findings().empty());
  one.clinic.remittance_lines[1].adjustments = {"CO:97:30.00"};
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::paid_differently);
  CHECK(found[0].money == dollars(3000));
}

TEST_CASE("money about a claim that is not on record is a finding of its time") {
  One one;
  auto unknown = answer_to(claim_line("CL-9", "Z0001", summer + days{1}, 1, 10000), "PAY-1", 2);
  one.clinic.remittance_lines.push_back(unknown);
  const auto found = one.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == FindingKind::paid_without_claim);
  CHECK(found[0].reference == "CL-9");
  CHECK(found[0].money == dollars(-8000));
  // Claims of that time are not on record yet.
  one.clinic.remittance_lines[1].service_date = summer - days{100};
  CHECK(one.findings().empty());
}

}  // namespace payments_test
