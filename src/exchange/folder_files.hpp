/// The files of a clinic folder.
#pragma once

#include "clinic/clinic.hpp"
#include "exchange/table.hpp"

namespace sparewell::exchange {

/// One line of a stock count.
struct StockCount {
  Lot lot;
  int quantity = 0;
  std::string place;  ///< "" for the clinic's main place

  friend bool operator==(const StockCount&, const StockCount&) = default;
};

[[nodiscard]] const Table<Supplier>& suppliers_table();
[[nodiscard]] const Table<Item>& catalogue_table();
[[nodiscard]] const Table<Patient>& patients_table();
[[nodiscard]] const Table<Prosthesis>& prostheses_table();
[[nodiscard]] const Table<Usage>& usage_table();
[[nodiscard]] const Table<Sensitivity>& sensitivities_table();
[[nodiscard]] const Table<Measurement>& measurements_table();
[[nodiscard]] const Table<Reaction>& reactions_table();
[[nodiscard]] const Table<Unit>& issued_table();
[[nodiscard]] const Table<StockCount>& stock_table();
[[nodiscard]] const Table<OrderLine>& orders_table();
[[nodiscard]] const Table<ClaimLine>& claims_table();
[[nodiscard]] const Table<InvoiceLine>& invoices_table();
[[nodiscard]] const Table<BillingCode>& codes_table();
[[nodiscard]] const Table<PayerRule>& payer_rules_table();
[[nodiscard]] const Table<PartPaper>& papers_table();

}  // namespace sparewell::exchange
