/// Everything known about one clinic at one moment: what the pure computations read.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "clinic/billing_answer.hpp"
#include "clinic/billing_code.hpp"
#include "clinic/claim.hpp"
#include "clinic/column_mapping.hpp"
#include "clinic/decision.hpp"
#include "clinic/handover.hpp"
#include "clinic/item.hpp"
#include "clinic/loan.hpp"
#include "clinic/month_close.hpp"
#include "clinic/order.hpp"
#include "clinic/order_costs.hpp"
#include "clinic/order_record.hpp"
#include "clinic/part_paper.hpp"
#include "clinic/patient.hpp"
#include "clinic/place.hpp"
#include "clinic/reaction.hpp"
#include "clinic/remittance.hpp"
#include "clinic/stock.hpp"
#include "clinic/substance.hpp"
#include "clinic/supplier.hpp"
#include "clinic/supplier_return.hpp"
#include "clinic/unit.hpp"

namespace sparewell {

/// What the clinic decides about itself.
struct ClinicSettings {
  std::string name;
  std::string ship_to;                    ///< postal address, lines separated by '\n'
  Currency currency;                      ///< of claims, and of suppliers that name none
  std::string main_place = "main store";  ///< where orders are delivered
  double service_target = 0.95;           ///< wanted chance of not running out, between 0 and 1
  /// From this day on every ending was recorded; units in use before may be in the records, those
  /// that had ended are not. Empty: not stated.
  std::optional<Date> records_begin;
  OrderCosts costs;
  /// Orders of a larger sum need a named person's approval before they are placed. Empty: none do.
  std::optional<Money> approval_above;
  /// What was handed out from this day on is compared with claims. Empty: from the first service
  /// that was billed.
  std::optional<Date> billing_begins = {};
  /// From this day on papers, and signed delivery sheets, are put on record here. Empty: they lie
  /// elsewhere, and are asked for only where the program handed the part out.
  std::optional<Date> papers_begin = {};

  friend bool operator==(const ClinicSettings&, const ClinicSettings&) = default;
};

/// Pieces promised to a patient: booked for a visit, or put away when they came. It is kept with a
/// quantity of 0 when all are handed over or cancelled.
struct Reservation {
  PatientRef patient;
  ItemCode item;
  std::string place;  ///< where they are handed over or lie
  int quantity = 0;
  std::optional<Date> needed_on;  ///< the day of the visit, or when a part may be worn out; empty:
                                  ///< promised without a day

  friend bool operator==(const Reservation&, const Reservation&) = default;
};

struct Clinic {
  ClinicSettings settings;
  std::vector<Supplier> suppliers;
  std::vector<Item> items;
  std::vector<Patient> patients;
  std::vector<Prosthesis> prostheses;
  std::vector<Usage> usage;
  std::vector<Sensitivity> sensitivities;
  std::vector<SensitivityDecision> decisions;
  std::vector<SubstanceRow> substances;  ///< beyond those that the program knows
  std::vector<Measurement> measurements;
  std::vector<Reaction> reactions;
  std::vector<Unit> units;
  std::vector<Handover> handovers;
  std::vector<StockLevel> shelf;
  std::vector<Reservation> reservations;
  std::vector<OrderLine> order_lines;
  std::vector<ClaimLine> claim_lines;
  std::vector<InvoiceLine> invoice_lines;
  std::vector<Place> places;  ///< those recorded; others are known from the shelf alone
  std::vector<Loan> loans;
  std::vector<SupplierReturn> supplier_returns;
  std::vector<OrderHeader> order_headers;
  std::vector<OrderPromise> order_promises;
  std::vector<OrderPiece> order_pieces;
  std::vector<OrderRevision> order_revisions;  ///< without their lines
  std::vector<BillingCode> billing_codes;      ///< beyond those that the program knows
  std::vector<PayerRule> payer_rules;          ///< likewise
  std::vector<Remittance> remittances;
  std::vector<RemittanceLine> remittance_lines;
  std::vector<PartPaper> part_papers;
  std::vector<BillingAnswer> billing_answers;
  std::vector<MonthClose> month_closes;  ///< without their entries
  std::vector<ColumnMapping> column_mappings;
};

/// Finds records of a Clinic by reference. Holds positions, so it stays valid while the vectors of
/// the clinic it was made from are not changed.
class ClinicIndex {
 public:
  explicit ClinicIndex(const Clinic& clinic);

  /// nullptr when there is no such record.
  [[nodiscard]] const Item* item(const ItemCode& code) const;
  [[nodiscard]] const Supplier* supplier(const SupplierName& name) const;
  [[nodiscard]] const Patient* patient(const PatientRef& ref) const;

 private:
  const Clinic* clinic_;
  std::unordered_map<ItemCode, std::size_t> items_;
  std::unordered_map<SupplierName, std::size_t> suppliers_;
  std::unordered_map<PatientRef, std::size_t> patients_;
};

/// The clinic as it could be known at the end of `today`: nothing issued, ended, measured, ordered
/// or received later. Usage dated later is kept, because changes are often known ahead.
[[nodiscard]] Clinic as_of(Clinic clinic, Date today);

}  // namespace sparewell
