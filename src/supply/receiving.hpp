/// Matches what a supplier delivered with what was ordered.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// Pieces of one lot that came, as counted and as their label says.
struct Delivery {
  ItemCode item;
  int quantity = 0;  ///< pieces that came, damaged ones included
  std::string lot;
  std::optional<Date> use_by;
  std::string place;
  Date on;
  int damaged = 0;                                ///< pieces of `quantity`; they go into quarantine
  bool damaged_settled = false;                   ///< the supplier does not replace them
  std::string damage = {};                        ///< what is wrong with them
  std::vector<std::string> serials = {};          ///< of the sound pieces, as far as they were read
  std::vector<std::string> damaged_serials = {};  ///< of the damaged ones

  [[nodiscard]] int sound() const { return quantity - damaged; }
  /// Pieces that the order has less to come.
  [[nodiscard]] int counted() const { return damaged_settled ? quantity : sound(); }
};

/// The place that damaged pieces are put to.
inline constexpr const char* quarantine_place = "quarantine";

/// Which order a delivery belongs to.
struct OrderMatch {
  enum class Kind {
    matched,
    several,        ///< lines of more than one order answer: a person chooses
    wrong_item,     ///< the order has no line for the item
    none_open,      ///< no order for the item has pieces to come
    unknown_order,  ///< no order has this number
    draft,          ///< the order was not sent
    cancelled
  };
  Kind kind = Kind::none_open;
  /// Positions in the lines that were looked at. matched: of one order and the item, to be filled
  /// in this order; several: of the lines that answer, the oldest first; else: what was found.
  std::vector<std::size_t> lines;
};

/// `lines` are those of the order when `order_ref` is given, else those of the item. An order is
/// asked for by number, or found as the only one with pieces of the item to come. `supplier` is ""
/// for any.
[[nodiscard]] OrderMatch match_order(const std::vector<OrderLine>& lines, const ItemCode& item,
                                     const std::string& order_ref, const SupplierName& supplier);

/// A serial number of this delivery that the records have of the same item already.
struct KnownSerial {
  std::string serial;
  Date on;             ///< of its receipt, or of its issue
  PatientRef patient;  ///< who has it or had it; "" when it was only received

  friend bool operator==(const KnownSerial&, const KnownSerial&) = default;
};

/// Something that a person has to look at.
struct ReceivingFinding {
  enum class Kind {
    over_delivered,  ///< more came than was still to come
    no_use_by,       ///< the item has a shelf life, and no use-by date was given
    expired,         ///< the use-by date lies before the day of receipt
    other_use_by,    ///< stock of the same lot is recorded with another use-by date
    known_serial     ///< a serial number was received or handed out before
  };
  Kind kind = Kind::over_delivered;
  bool stops = false;          ///< nothing is to be recorded
  int outstanding = 0;         ///< over_delivered: pieces that were still to come
  std::optional<Date> use_by;  ///< other_use_by: the one recorded
  std::optional<KnownSerial> known = {};

  friend bool operator==(const ReceivingFinding&, const ReceivingFinding&) = default;
};

/// What the person at the bench has decided beforehand.
struct Accepted {
  bool extra = false;         ///< take more than was ordered
  bool no_use_by = false;     ///< the label gives no use-by date although the item has a shelf life
  bool known_serial = false;  ///< a piece that was here before has come again
};

/// An order line with what it has been given.
struct LineReceipt {
  std::size_t line = 0;  ///< position in the lines that were looked at
  OrderLine after;
  int quantity = 0;  ///< pieces of this delivery
};

struct Receiving {
  std::vector<ReceivingFinding> findings;
  std::vector<LineReceipt> lines;         ///< empty when a finding stops
  std::optional<StockMovement> movement;  ///< of sound pieces; empty when a finding stops
  std::optional<StockMovement> damaged;   ///< into quarantine

  [[nodiscard]] bool is_stopped() const { return !movement && !damaged; }
};

/// Fills the matched lines in turn; extra pieces go to the last one. `shelf` is the stock of the
/// item, `known` what the records have of its serial numbers. Expired pieces are taken only into a
/// place of quarantine. Damaged pieces go into quarantine, and are still to come unless they are
/// settled. Preconditions: the match is Kind::matched, the quantity is 1 or more, and no more are
/// damaged than came.
[[nodiscard]] Receiving receive(const Delivery& delivery, const Item& item,
                                const std::vector<OrderLine>& lines, const OrderMatch& match,
                                const std::vector<StockLevel>& shelf, const Accepted& accepted,
                                const std::vector<KnownSerial>& known = {});

/// An order line with pieces still to come.
struct ExpectedLine {
  OrderLine line;
  int lead_days = 0;                ///< mean of the learned lead time
  bool lead_assumed = false;        ///< the catalogue quotes no days
  Date expected_on;                 ///< the promised day, or else the order's day plus lead_days
  int overdue_days = 0;             ///< 0 when it is not yet expected
  std::optional<Date> promised_on;  ///< by the supplier
  bool on_back_order = false;
};

/// Everything that suppliers still owe, the longest overdue first. The lead time is learned from
/// what was received (supply/lead_time), where the supplier has promised no day. `supplier` is ""
/// for all.
[[nodiscard]] std::vector<ExpectedLine> still_to_come(const Clinic& clinic,
                                                      const SupplierName& supplier, Date today);

}  // namespace sparewell::supply
