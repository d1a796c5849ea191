/// The patients, items and suppliers that rows of a file may refer to.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>

#include "exchange/read_table.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

class References {
 public:
  explicit References(const store::Snapshot& snapshot);

  [[nodiscard]] bool has(const SupplierName& supplier) const {
    return suppliers_.contains(supplier);
  }
  void add(const Supplier& supplier) { suppliers_[supplier.name] = supplier.currency; }

  /// What is wrong when the patient or the item is not known.
  [[nodiscard]] std::optional<exchange::Fault> unknown(const PatientRef& patient) const;
  [[nodiscard]] std::optional<exchange::Fault> unknown(const ItemCode& item) const;

  /// The currency of a row's amounts: its own, else (when the file has no currency column) the
  /// stored item's, else the supplier's, else the clinic's.
  [[nodiscard]] Currency currency_of(const exchange::CurrencyClues& clues) const;

 private:
  std::unordered_set<PatientRef> patients_;
  std::unordered_map<ItemCode, Currency> items_;
  std::unordered_map<SupplierName, Currency> suppliers_;
  Currency clinic_currency_;
};

/// The first reference of a record that is not known. A supplier is never missing: it is made.
template <class Record>
[[nodiscard]] std::optional<exchange::Fault> unknown_reference(const Record& record,
                                                               const References& references) {
  if constexpr (requires { record.patient; }) {
    if (auto fault = references.unknown(record.patient)) return fault;
  }
  if constexpr (requires { record.item; }) return references.unknown(record.item);
  return std::nullopt;
}

/// The supplier that a record refers to; empty when it names none.
template <class Record>
[[nodiscard]] SupplierName supplier_of(const Record& record) {
  if constexpr (requires { record.supplier; }) {
    return record.supplier;
  } else {
    return {};
  }
}

}  // namespace sparewell::desk
