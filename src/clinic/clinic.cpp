#include "clinic/clinic.hpp"

#include <set>
#include <utility>

namespace sparewell {
namespace {

template <class Key, class Records>
const typename Records::value_type* find_in(const std::unordered_map<Key, std::size_t>& positions,
                                            const Records& records, const Key& key) {
  const auto found = positions.find(key);
  return found == positions.end() ? nullptr : &records[found->second];
}

void forget_later_payments(Clinic& clinic, Date today) {
  std::set<std::pair<std::string, std::string>> later;
  for (const Remittance& paid : clinic.remittances) {
    if (paid.paid_on > today) later.emplace(paid.payer, paid.reference);
  }
  if (later.empty()) return;
  std::erase_if(clinic.remittances, [&](const Remittance& paid) { return paid.paid_on > today; });
  std::erase_if(clinic.remittance_lines, [&](const RemittanceLine& line) {
    return later.contains({line.payer, line.reference});
  });
}

}  // namespace

ClinicIndex::ClinicIndex(const Clinic& clinic) : clinic_{&clinic} {
  for (std::size_t i = 0; i < clinic.items.size(); ++i) items_.emplace(clinic.items[i].code, i);
  for (std::size_t i = 0; i < clinic.suppliers.size(); ++i) {
    suppliers_.emplace(clinic.suppliers[i].name, i);
  }
  for (std::size_t i = 0; i < clinic.patients.size(); ++i) {
    patients_.emplace(clinic.patients[i].ref, i);
  }
}

const Item* ClinicIndex::item(const ItemCode& code) const {
  return find_in(items_, clinic_->items, code);
}

const Supplier* ClinicIndex::supplier(const SupplierName& name) const {
  return find_in(suppliers_, clinic_->suppliers, name);
}

const Patient* ClinicIndex::patient(const PatientRef& ref) const {
  return find_in(patients_, clinic_->patients, ref);
}

Clinic as_of(Clinic clinic, Date today) {
  std::erase_if(clinic.prostheses, [&](const Prosthesis& p) { return p.delivered_on > today; });
  for (auto& prosthesis : clinic.prostheses) {
    if (prosthesis.ended_on && *prosthesis.ended_on > today) prosthesis.ended_on.reset();
  }
  std::erase_if(clinic.measurements, [&](const Measurement& m) { return m.measured_on > today; });
  std::erase_if(clinic.decisions, [&](const auto& made) { return made.decided_on > today; });
  for (auto& decision : clinic.decisions) {
    if (decision.withdrawn_on && *decision.withdrawn_on > today) decision.withdrawn_on.reset();
  }
  std::erase_if(clinic.reactions, [&](const Reaction& r) { return r.began_on > today; });
  for (auto& reaction : clinic.reactions) {
    if (reaction.ended_on && *reaction.ended_on > today) reaction.ended_on.reset();
  }
  std::erase_if(clinic.units, [&](const Unit& unit) { return unit.issued_on > today; });
  for (auto& unit : clinic.units) {
    if (!unit.ended_on || *unit.ended_on <= today) continue;
    unit.ended_on.reset();
    unit.end_reason.reset();
  }
  std::erase_if(clinic.handovers, [&](const Handover& h) { return h.issued_on > today; });
  for (auto& handover : clinic.handovers) {
    if (handover.signed_on && *handover.signed_on > today) handover.signed_on.reset();
  }
  std::erase_if(clinic.order_lines, [&](const OrderLine& line) { return line.ordered_on > today; });
  for (auto& line : clinic.order_lines) {
    if (!line.received_on || *line.received_on <= today) continue;
    line.received_on.reset();
    line.received_quantity = 0;
  }
  std::erase_if(clinic.claim_lines, [&](const ClaimLine& c) { return c.service_date > today; });
  std::erase_if(clinic.invoice_lines, [&](const InvoiceLine& line) {
    return line.invoiced_on && *line.invoiced_on > today;
  });
  forget_later_payments(clinic, today);
  std::erase_if(clinic.part_papers, [&](const PartPaper& p) { return p.issued_on > today; });
  std::erase_if(clinic.billing_answers, [&](const auto& made) { return made.answered_on > today; });
  std::erase_if(clinic.month_closes, [&](const auto& made) { return made.closed_on > today; });
  std::erase_if(clinic.loans, [&](const Loan& loan) { return loan.lent_on > today; });
  std::erase_if(clinic.supplier_returns,
                [&](const SupplierReturn& sent) { return sent.sent_on > today; });
  return clinic;
}

}  // namespace sparewell
