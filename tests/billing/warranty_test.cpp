// Parts that ended within their maker's term; counted by hand.
#include "billing/warranty.hpp"

#include <doctest/doctest.h>

#include "billing/small_supplier_books.hpp"

namespace warranty_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

/// Issued so many days ago, worn out after `lasted`; L1 has a term of 180 days.
Clinic clinic_with_ending(int issued_ago, int lasted, EndReason reason) {
  auto clinic = books_made();
  clinic.items.front().warranty_days = 180;
  Unit unit;
  unit.patient = {"P-1"};
  unit.item = {"L1"};
  unit.lot = "A17";
  unit.issued_on = today - days{issued_ago};
  unit.ended_on = unit.issued_on + days{lasted};
  unit.end_reason = reason;
  clinic.units.push_back(unit);
  return clinic;
}

SupplierReturn sent_back(Date on, const std::string& lot = "A17") {
  SupplierReturn sent;
  sent.number = 1;
  sent.supplier = {"Example Supplies"};
  sent.lot = {{"L1"}, lot, {}};
  sent.quantity = 1;
  sent.sent_on = on;
  return sent;
}

std::vector<BillingFinding> found(const Clinic& clinic) {
  return warranty_findings(clinic, today, [](const Unit&) { return std::optional{99.5}; });
}

}  // namespace

TEST_CASE("a part that wore out within its term is due a credit") {
  const auto findings = found(clinic_with_ending(300, 180, EndReason::tear));
  REQUIRE(findings.size() == 1);
  const auto& finding = findings.front();
  CHECK(finding.kind == FindingKind::warranty_due);
  CHECK(finding.since == today - days{120});
  CHECK(finding.other_day == today - days{300});
  CHECK(finding.money == cents(10000));
  CHECK(finding.ours == 180);
  CHECK(finding.theirs == 180);
  CHECK(finding.wear_age == 99.5);
  CHECK(finding.remedy == Remedy::claim_warranty);
  CHECK(finding.reference == "A17");
}

TEST_CASE("endings beyond the term, of other reasons, long ago, or without a term are not") {
  CHECK(found(clinic_with_ending(300, 181, EndReason::tear)).empty());
  CHECK(found(clinic_with_ending(300, 90, EndReason::lost)).empty());
  CHECK(found(clinic_with_ending(456, 91, EndReason::hole)).size() == 1);
  CHECK(found(clinic_with_ending(456, 90, EndReason::hole)).empty());
  auto clinic = clinic_with_ending(300, 90, EndReason::hole);
  clinic.items.front().warranty_days.reset();
  CHECK(found(clinic).empty());
}

TEST_CASE("a piece of the lot that was sent back since settles one part") {
  auto clinic = clinic_with_ending(300, 90, EndReason::hole);
  clinic.supplier_returns.push_back(sent_back(today - days{211}));
  CHECK(found(clinic).size() == 1);  // sent before it ended
  clinic.supplier_returns.push_back(sent_back(today - days{200}, "B18"));
  CHECK(found(clinic).size() == 1);  // of another lot
  clinic.supplier_returns.push_back(sent_back(today - days{200}));
  CHECK(found(clinic).empty());
  clinic.units.push_back(clinic.units.front());
  clinic.units.back().copy = 2;
  CHECK(found(clinic).size() == 1);
}

TEST_CASE("a part whose price or wear is not known is due all the same") {
  auto clinic = clinic_with_ending(300, 90, EndReason::worn);
  clinic.items.front().unit_cost.reset();
  const auto findings = warranty_findings(
      clinic, today, [](const Unit&) -> std::optional<double> { return std::nullopt; });
  REQUIRE(findings.size() == 1);
  CHECK_FALSE(findings.front().money.has_value());
  CHECK_FALSE(findings.front().wear_age.has_value());
}

}  // namespace warranty_test
