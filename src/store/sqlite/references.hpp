/// The clinic's own identifiers and the rows that they stand for.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <unordered_map>

#include "clinic/refs.hpp"
#include "store/sqlite/connection.hpp"

namespace sparewell::store::sqlite {

/// The records that others refer to.
enum class Named { supplier, item, patient };

constexpr Named named(const SupplierName&) {
  return Named::supplier;
}
constexpr Named named(const ItemCode&) {
  return Named::item;
}
constexpr Named named(const PatientRef&) {
  return Named::patient;
}

/// Looks identifiers up and remembers them for the length of one transaction.
class References {
 public:
  explicit References(Connection& connection) : connection_{&connection} {}

  /// The row of a reference; throws StoreFailure{not_found} when there is none.
  [[nodiscard]] std::int64_t row(Named kind, const std::string& text);
  /// The reference of a row. Throws StoreFailure{corrupt} when there is no such row.
  [[nodiscard]] const std::string& text(Named kind, std::int64_t row);
  /// To be called when a stored identifier may have changed.
  void forget();

 private:
  struct Known {
    std::unordered_map<std::string, std::int64_t> rows;
    std::unordered_map<std::int64_t, std::string> texts;
  };
  Known& known(Named kind) { return known_[static_cast<std::size_t>(kind)]; }

  Connection* connection_;
  std::array<Known, 3> known_;
};

}  // namespace sparewell::store::sqlite
