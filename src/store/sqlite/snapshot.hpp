/// The reading half of the port, the same in a snapshot and inside a unit of work.
#pragma once

#include <memory>
#include <utility>

#include "store/sqlite/bookings.hpp"
#include "store/sqlite/counts.hpp"
#include "store/sqlite/ledger.hpp"
#include "store/sqlite/numbered.hpp"
#include "store/sqlite/of_item.hpp"
#include "store/sqlite/records/billing.hpp"
#include "store/sqlite/records/care.hpp"
#include "store/sqlite/records/catalogue.hpp"
#include "store/sqlite/records/handovers.hpp"
#include "store/sqlite/records/orders.hpp"
#include "store/sqlite/records/papers.hpp"
#include "store/sqlite/records/people.hpp"
#include "store/sqlite/records/stock.hpp"
#include "store/sqlite/records/stock_work.hpp"
#include "store/sqlite/records/units.hpp"
#include "store/sqlite/settings.hpp"
#include "store/sqlite/table_access.hpp"

namespace sparewell::store::sqlite {

/// `Base` with the overloads that it inherits from many classes under one name.
template <class Base, class... Records>
class WithRows : public Base {
 public:
  using Reads<Records>::rows...;
};

/// `Base` (Snapshot or UnitOfWork) with everything answered that needs no list of records.
template <class Base, class... Records>
class ReadsOf;

template <class Base>
class ReadsOf<Base> : public Base {
 public:
  [[nodiscard]] ClinicSettings settings() const override {
    return translated([&] { return read_settings(session()); });
  }
  [[nodiscard]] std::vector<StockLevel> shelf() const override {
    return translated([&] { return current_shelf(session()); });
  }
  [[nodiscard]] std::optional<Row<Item>> item(const ItemCode& code) const override {
    return translated([&] { return find_item(session(), code); });
  }
  [[nodiscard]] std::optional<Row<Patient>> patient(const PatientRef& ref) const override {
    return translated([&] { return find_patient(session(), ref); });
  }
  [[nodiscard]] std::vector<Row<Unit>> units_of(const ItemCode& item) const override {
    return translated([&] { return find_units(session(), item); });
  }
  [[nodiscard]] std::vector<Row<OrderLine>> order_lines_of(const ItemCode& item) const override {
    return translated([&] { return find_order_lines(session(), item); });
  }
  [[nodiscard]] std::vector<Row<OrderLine>> lines_of_order(
      const std::string& order_ref) const override {
    return translated([&] { return find_lines_of_order(session(), order_ref); });
  }
  [[nodiscard]] std::vector<StockLevel> shelf_of(const ItemCode& item) const override {
    return translated([&] { return shelf_of_item(session(), item); });
  }
  [[nodiscard]] std::optional<Row<Loan>> loan(int number) const override {
    return translated([&] { return find_numbered<Loan>(session(), number); });
  }
  [[nodiscard]] std::optional<Row<SupplierReturn>> supplier_return(int number) const override {
    return translated([&] { return find_numbered<SupplierReturn>(session(), number); });
  }
  [[nodiscard]] int last_loan() const override {
    return translated([&] { return last_number<Loan>(session()); });
  }
  [[nodiscard]] int last_supplier_return() const override {
    return translated([&] { return last_number<SupplierReturn>(session()); });
  }
  [[nodiscard]] std::vector<StockMovement> movements() const override {
    return translated([&] { return all_movements(session()); });
  }
  [[nodiscard]] std::vector<StockMovement> movements_of(const ItemCode& item,
                                                        const std::string& serial) const override {
    return translated([&] { return movements_of_serial(session(), item, serial); });
  }
  [[nodiscard]] std::vector<StockMovement> movements_of_lot(const ItemCode& item,
                                                            const std::string& lot) const override {
    return translated([&] { return sqlite::movements_of_lot(session(), item, lot); });
  }
  [[nodiscard]] std::vector<StockMovement> movements_of_kind(MovementKind kind) const override {
    return translated([&] { return sqlite::movements_of_kind(session(), kind); });
  }
  [[nodiscard]] std::vector<Booking> bookings_of(const ItemCode& item, int most) const override {
    return translated([&] { return newest_bookings(session(), item, most); });
  }
  [[nodiscard]] std::optional<Booking> booking(RowId id) const override {
    return translated([&] { return find_booking(session(), id); });
  }
  [[nodiscard]] std::vector<ShelfCountRecord> counts() const override {
    return translated([&] { return all_counts(session()); });
  }
  [[nodiscard]] std::vector<Change> changes(int most) const override {
    return translated([&] { return newest_changes(session().connection, most); });
  }

 protected:
  [[nodiscard]] virtual Session& session() const = 0;
};

/// Adds the reading of one more record type at each level.
template <class Base, class First, class... Rest>
class ReadsOf<Base, First, Rest...> : public ReadsOf<Base, Rest...> {
 public:
  using ReadsOf<Base, Rest...>::rows;
  [[nodiscard]] std::vector<Row<First>> rows(std::type_identity<First>) const override {
    return translated([&] { return read_all<First>(this->session()); });
  }
};

/// ReadsOf for every record type of the port.
template <class Base, class Access = AccessToRecords<Reads>>
struct ReadsOfAll;
template <class Base, class... Records>
struct ReadsOfAll<Base, AccessTo<Reads, Records...>> {
  using type = ReadsOf<WithRows<Base, Records...>, Records...>;
};

}  // namespace sparewell::store::sqlite
