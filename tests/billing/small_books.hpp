// A patient's books made by hand.
#pragma once

#include <string>
#include <vector>

#include "billing/books_made.hpp"
#include "billing/reconcile_claims.hpp"

namespace sparewell::test {

struct SmallBooks {
  Clinic clinic = make_books(1, {}).clinic;  // items and settings

  SmallBooks() {
    clinic.settings.papers_begin.reset();
    clinic.settings.billing_begins.reset();
  }

  /// Handed to P-1 for the left side.
  Unit& hand(const std::string& item, Date day, const std::string& lot = "L") {
    Unit unit;
    unit.patient = {"P-1"};
    unit.item = {item};
    unit.issued_on = day;
    unit.lot = lot;
    unit.copy = static_cast<int>(clinic.units.size()) + 1;
    clinic.units.push_back(unit);
    return clinic.units.back();
  }
  ClaimLine& bill(const std::string& code, Date day, int quantity = 1) {
    ClaimLine line;
    line.claim_ref = "C-" + std::to_string(clinic.claim_lines.size() + 1);
    line.patient = {"P-1"};
    line.side = Side::left;
    line.service_date = day;
    line.code = code;
    line.quantity = quantity;
    line.charge = cents(price_of(code) * quantity);
    clinic.claim_lines.push_back(line);
    return clinic.claim_lines.back();
  }

  [[nodiscard]] billing::ClaimBooks books() const {
    return billing::reconcile_claims(clinic, test_codes(), test_rules(), books_today);
  }
  [[nodiscard]] std::vector<billing::BillingFinding> findings() const { return books().findings; }
};

inline void end(Unit& unit, Date day, EndReason reason) {
  unit.ended_on = day;
  unit.end_reason = reason;
}

}  // namespace sparewell::test
