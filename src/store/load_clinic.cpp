#include "store/port.hpp"

namespace sparewell::store {
namespace {

template <class Record>
std::vector<Record> records(const Snapshot& snapshot) {
  auto rows = snapshot.all<Record>();
  std::vector<Record> made;
  made.reserve(rows.size());
  for (auto& row : rows) made.push_back(std::move(row.record));
  return made;
}

}  // namespace

Clinic load_clinic(const Snapshot& snapshot) {
  Clinic clinic;
  clinic.settings = snapshot.settings();
  clinic.suppliers = records<Supplier>(snapshot);
  clinic.items = records<Item>(snapshot);
  clinic.patients = records<Patient>(snapshot);
  clinic.prostheses = records<Prosthesis>(snapshot);
  clinic.usage = records<Usage>(snapshot);
  clinic.sensitivities = records<Sensitivity>(snapshot);
  clinic.decisions = records<SensitivityDecision>(snapshot);
  clinic.substances = records<SubstanceRow>(snapshot);
  clinic.measurements = records<Measurement>(snapshot);
  clinic.reactions = records<Reaction>(snapshot);
  clinic.units = records<Unit>(snapshot);
  clinic.handovers = records<Handover>(snapshot);
  clinic.shelf = snapshot.shelf();
  clinic.reservations = records<Reservation>(snapshot);
  clinic.order_lines = records<OrderLine>(snapshot);
  clinic.claim_lines = records<ClaimLine>(snapshot);
  clinic.invoice_lines = records<InvoiceLine>(snapshot);
  clinic.places = records<Place>(snapshot);
  clinic.loans = records<Loan>(snapshot);
  clinic.supplier_returns = records<SupplierReturn>(snapshot);
  clinic.order_headers = records<OrderHeader>(snapshot);
  clinic.order_promises = records<OrderPromise>(snapshot);
  clinic.order_pieces = records<OrderPiece>(snapshot);
  clinic.order_revisions = records<OrderRevision>(snapshot);
  clinic.billing_codes = records<BillingCode>(snapshot);
  clinic.payer_rules = records<PayerRule>(snapshot);
  clinic.remittances = records<Remittance>(snapshot);
  clinic.remittance_lines = records<RemittanceLine>(snapshot);
  clinic.part_papers = records<PartPaper>(snapshot);
  clinic.billing_answers = records<BillingAnswer>(snapshot);
  clinic.month_closes = records<MonthClose>(snapshot);
  clinic.column_mappings = records<ColumnMapping>(snapshot);
  return clinic;
}

}  // namespace sparewell::store
