/// The clinic's database as a port in the clinic's words. No SQL, handle or driver type crosses it;
/// tests/store holds the conformance suite that every engine behind it passes.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <type_traits>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::store {

/// Why the store could not do what was asked; the same cause gives the same value on every engine.
enum class StoreError {
  busy,        ///< another program holds the file; nothing was written, try again
  conflict,    ///< somebody else changed the record meanwhile
  constraint,  ///< a rule of the schema forbids it
  not_found,
  not_a_clinic,    ///< the file exists but is not a Sparewell clinic file
  schema_too_new,  ///< written by a newer program
  corrupt,
  read_only,
  disk_full,
  cannot_open,
  connection_lost,
  outcome_unknown  ///< the connection broke during commit: read again before repeating
};

/// Thrown when a read or a write fails. what() is one clear sentence for a person.
class StoreFailure : public std::runtime_error {
 public:
  StoreFailure(StoreError error, const std::string& sentence)
      : std::runtime_error{sentence}, error_{error} {}
  [[nodiscard]] StoreError error() const { return error_; }

 private:
  StoreError error_;
};

/// Identifies a stored record inside one database; means nothing outside it.
struct RowId {
  std::int64_t value = 0;
  friend auto operator<=>(const RowId&, const RowId&) = default;
};

template <class Record>
struct Row {
  RowId id;
  Record record;
};

/// Who writes, and why; when is asked of the store's clock.
struct Author {
  std::string who;
  std::string why;
};

/// One entry of the change log.
struct Change {
  std::string who;
  std::string at;  ///< UTC, "2026-11-25T09:30:00Z"
  std::string why;
  std::string record_kind;  ///< "unit", "item", "movement" ...
  RowId row;
  std::string action;  ///< "added" or "changed"
  std::string before;  ///< JSON object of the values before a change; "" for an addition
};

/// A unit of work that moved stock.
struct Booking {
  RowId id;
  std::string who;
  std::string at;  ///< UTC, as in Change
  std::string why;
  std::vector<StockMovement> movements;  ///< in the order of writing
  /// It wrote more than movements, lots and places: an order line, a loan, a unit ...
  bool wrote_more = false;
  std::optional<RowId> reversed_by;
};

template <class Record>
class Reads {
 public:
  virtual ~Reads() = default;
  /// Every record, in the order in which they were added.
  [[nodiscard]] virtual std::vector<Row<Record>> rows(std::type_identity<Record>) const = 0;
};

template <class Record>
class Writes {
 public:
  virtual ~Writes() = default;
  /// References inside the record (patient, item, supplier) must already be stored; otherwise
  /// throws StoreFailure{not_found}. A second record with the same natural key, or a value that one
  /// record alone shows to be wrong (the CHECKs of schema/), throws StoreFailure{constraint}. A
  /// refused record leaves nothing behind, and the unit of work may go on.
  virtual RowId add(const Record& record) = 0;
  /// Puts `record` in place of the stored one and logs the values it had; a record that is already
  /// so is left alone and not logged.
  /// Throws StoreFailure{not_found} when there is no such row.
  virtual void replace(RowId id, const Record& record) = 0;
};

template <template <class> class Access, class... Records>
class AccessTo : public Access<Records>... {};

/// The records that are read and written whole. Natural keys, for which the store allows one
/// record: Supplier name; Item code; Patient ref; Prosthesis patient+side+delivered_on; Usage
/// patient+from_date; Sensitivity patient+substance+noted_on; SensitivityDecision
/// patient+item+substance+decided_on; SubstanceRow substance+relation+other; Measurement
/// patient+side+measured_on+at_cm; Reaction patient+side+began_on; Unit patient+side+item+lot+serial+issued_on+copy; OrderLine
/// supplier+order_ref+item+copy; ClaimLine claim_ref+patient+side+service_date+code+modifiers+copy;
/// InvoiceLine supplier+invoice_ref+order_ref+item+copy; Reservation patient+item+place+needed_on;
/// Place name; Loan number; SupplierReturn number; Handover as Unit, which must be stored;
/// OrderHeader supplier+order_ref; OrderPromise supplier+order_ref+item+copy; OrderPiece that and
/// position; OrderRevision supplier+order_ref+revision; OrderRevisionLine that and position;
/// BillingCode list+code+valid_from; PayerRule payer+code+rule+words+valid_from; Remittance
/// payer+reference; RemittanceLine that and position; PartPaper as Unit, paper+dated_on; BillingAnswer
/// finding+number; MonthClose month+number; ClosedEntry that and entry+key; ColumnMapping name.
/// Order revisions and their lines, answers, closings and their entries are added only: replacing
/// one throws StoreFailure{constraint}.
template <template <class> class Access>
using AccessToRecords =
    AccessTo<Access, Supplier, Item, Patient, Prosthesis, Usage, Sensitivity, Measurement,
             Reaction, Unit, OrderLine, ClaimLine, InvoiceLine, Reservation, Place, Loan, SupplierReturn, Handover,
             OrderHeader, OrderPromise, OrderPiece, OrderRevision, OrderRevisionLine,
             SensitivityDecision, SubstanceRow, BillingCode, PayerRule, Remittance, RemittanceLine,
             PartPaper, BillingAnswer, MonthClose, ClosedEntry, ColumnMapping>;

/// A consistent view of the database. Not for sharing between threads.
class Snapshot : public AccessToRecords<Reads> {
 public:
  /// Every record of one type: `snapshot.all<Unit>()`.
  template <class Record>
  [[nodiscard]] std::vector<Row<Record>> all() const {
    return static_cast<const Reads<Record>&>(*this).rows(std::type_identity<Record>{});
  }

  [[nodiscard]] virtual ClinicSettings settings() const = 0;
  /// Stock by lot and place, the sum of the ledger; lots whose sum is zero are left out.
  [[nodiscard]] virtual std::vector<StockLevel> shelf() const = 0;

  // What is recorded of one item, patient or order, found without reading the rest; none when the
  // store does not have it. Lists are in the order in which the records were added.
  [[nodiscard]] virtual std::optional<Row<Item>> item(const ItemCode& code) const = 0;
  [[nodiscard]] virtual std::optional<Row<Patient>> patient(const PatientRef& ref) const = 0;
  [[nodiscard]] virtual std::vector<Row<Unit>> units_of(const ItemCode& item) const = 0;
  [[nodiscard]] virtual std::vector<Row<OrderLine>> order_lines_of(const ItemCode& item) const = 0;
  /// The lines of the orders with this number; several suppliers may have given out the same.
  [[nodiscard]] virtual std::vector<Row<OrderLine>> lines_of_order(
      const std::string& order_ref) const = 0;
  /// As shelf(), of one item.
  [[nodiscard]] virtual std::vector<StockLevel> shelf_of(const ItemCode& item) const = 0;

  /// nullopt when there is none with this number.
  [[nodiscard]] virtual std::optional<Row<Loan>> loan(int number) const = 0;
  [[nodiscard]] virtual std::optional<Row<SupplierReturn>> supplier_return(int number) const = 0;
  /// The highest number given out so far; 0 when none was.
  [[nodiscard]] virtual int last_loan() const = 0;
  [[nodiscard]] virtual int last_supplier_return() const = 0;

  /// The ledger in the order of writing.
  [[nodiscard]] virtual std::vector<StockMovement> movements() const = 0;
  /// Of these, those of pieces of the item with this serial number; of each, that number alone.
  [[nodiscard]] virtual std::vector<StockMovement> movements_of(
      const ItemCode& item, const std::string& serial) const = 0;
  /// Of these, those of the item's lots with this number, whatever their use-by date.
  [[nodiscard]] virtual std::vector<StockMovement> movements_of_lot(
      const ItemCode& item, const std::string& lot) const = 0;
  [[nodiscard]] virtual std::vector<StockMovement> movements_of_kind(MovementKind kind) const = 0;
  /// The newest `most` bookings that moved the item, newest first.
  [[nodiscard]] virtual std::vector<Booking> bookings_of(const ItemCode& item, int most) const = 0;
  /// nullopt when no unit of work with this number moved stock.
  [[nodiscard]] virtual std::optional<Booking> booking(RowId id) const = 0;
  /// Every count of a lot at a place, in the order of writing.
  [[nodiscard]] virtual std::vector<ShelfCountRecord> counts() const = 0;
  /// The newest `most` entries of the change log, newest first.
  [[nodiscard]] virtual std::vector<Change> changes(int most) const = 0;
};

/// One write transaction. Everything is undone unless commit() returns. Reads inside it see its own
/// writes. At most one is open at a time in the whole database: keep it short, and never open
/// across a dialog.
class UnitOfWork : public Snapshot, public AccessToRecords<Writes> {
 public:
  template <class Record>
  RowId put(const Record& record) {
    return static_cast<Writes<Record>&>(*this).add(record);
  }
  template <class Record>
  void put_instead(RowId id, const Record& record) {
    static_cast<Writes<Record>&>(*this).replace(id, record);
  }

  virtual void save(const ClinicSettings& settings) = 0;
  /// Appends to the ledger. Throws StoreFailure{constraint} when the lot's stock at the place would
  /// fall below zero, or the quantity is zero; StoreFailure{not_found} for an unknown item. A new
  /// lot is made on the way; item, lot number and use-by date identify it.
  virtual void record(const StockMovement& movement) = 0;
  /// Notes that this unit of work takes back the booking; it records the movements itself. Throws
  /// StoreFailure{not_found} when there is none, {constraint} when it was taken back already.
  virtual void mark_reversed(RowId booking) = 0;
  /// Keeps that a lot was counted; the correction of the ledger, if one is due, is a movement.
  /// Throws StoreFailure{not_found} for an unknown item, StoreFailure{constraint} for a count below
  /// zero or without a place. A new lot is made on the way.
  virtual void record_count(const ShelfCountRecord& count) = 0;
  /// The next order number of a year, for example "SW-2026-0001"; never given out twice, even
  /// when the order is cancelled later. A unit of work that is not committed gives its number back.
  /// Numbers that stored order lines bear already are passed over.
  virtual std::string take_order_number(int year) = 0;
  /// Throws StoreFailure; after outcome_unknown the caller must read again before repeating. Any
  /// later use of this unit of work throws std::logic_error.
  virtual void commit() = 0;
};

/// An open clinic database. One thread at a time; open another Store for another thread.
class Store {
 public:
  virtual ~Store() = default;
  [[nodiscard]] virtual std::unique_ptr<Snapshot> read() = 0;
  /// Throws StoreFailure{busy} when another writer does not finish within the busy timeout, and at
  /// once when a unit of work of this Store is still open.
  [[nodiscard]] virtual std::unique_ptr<UnitOfWork> begin_write(const Author& author) = 0;
  /// Looks for damage and broken rules; an empty list means that nothing was found. Each entry is
  /// one sentence.
  [[nodiscard]] virtual std::vector<std::string> verify() = 0;
  /// Writes a complete, checked copy of what is committed. An older clinic file at `path` that
  /// nobody has open is replaced; any other file there is refused. Throws StoreFailure, and then
  /// leaves no partial file.
  virtual void copy_to(const std::string& path) = 0;
};

/// Returns the time now; the store itself asks no clock.
using Clock = std::function<std::chrono::system_clock::time_point()>;

/// Everything in the database as one value.
[[nodiscard]] Clinic load_clinic(const Snapshot& snapshot);

}  // namespace sparewell::store
