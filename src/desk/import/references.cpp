#include "desk/import/references.hpp"

#include "clinic/say.hpp"

namespace sparewell::desk {

References::References(const store::Snapshot& snapshot)
    : clinic_currency_{snapshot.settings().currency} {
  for (const auto& row : snapshot.all<Patient>()) patients_.insert(row.record.ref);
  for (const auto& row : snapshot.all<Item>()) items_[row.record.code] = row.record.currency;
  for (const auto& row : snapshot.all<Supplier>()) add(row.record);
}

std::optional<exchange::Fault> References::unknown(const PatientRef& patient) const {
  if (patients_.contains(patient)) return std::nullopt;
  return exchange::Fault{"patient_ref",
                         say("'{}' is in neither patients.csv nor the database; add it there "
                             "or correct it",
                             exchange::excerpt(patient.text))};
}

std::optional<exchange::Fault> References::unknown(const ItemCode& item) const {
  if (items_.contains(item)) return std::nullopt;
  return exchange::Fault{"item_code",
                         say("'{}' is in neither catalogue.csv nor the database; add it there or "
                             "correct it",
                             exchange::excerpt(item.text))};
}

Currency References::currency_of(const exchange::CurrencyClues& clues) const {
  if (clues.own) {
    if (const auto own = parse_currency(*clues.own)) return *own;
  } else if (const auto item = items_.find(ItemCode{std::string{clues.item}});
             item != items_.end()) {
    return item->second;
  }
  const auto supplier = suppliers_.find(SupplierName{std::string{clues.supplier}});
  return supplier == suppliers_.end() ? clinic_currency_ : supplier->second;
}

}  // namespace sparewell::desk
