/// Who and what a recall of an item, or of one lot of it, touches.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/loan.hpp"
#include "clinic/order.hpp"
#include "clinic/patient.hpp"
#include "clinic/place.hpp"
#include "clinic/stock.hpp"
#include "clinic/unit.hpp"

namespace sparewell::supply {

/// Whether a piece belongs to the recalled lot. Only pieces with another lot number are left out.
enum class LotMatch {
  recalled,
  written_alike,  ///< the same but for blanks, signs and upper or lower case: look at the piece
  not_recorded    ///< no lot number was recorded: look at the piece
};

/// Everything recorded of one item.
struct ItemRecords {
  std::vector<Unit> units;
  std::vector<Patient> patients;  ///< at least those of the units
  std::vector<StockLevel> shelf;
  std::vector<OrderLine> order_lines;
  std::vector<Place> places = {};  ///< those recorded
  std::vector<Loan> loans = {};
};

struct RecalledUnit {
  Unit unit;
  LotMatch match = LotMatch::recalled;
  bool in_hands = false;  ///< not ended by today; also a spare in a drawer
};

struct RecalledPatient {
  Patient patient;
  std::optional<Date> visit;        ///< the next one, today or later; empty when none is booked
  std::vector<RecalledUnit> units;  ///< those in hands first, then the last issued first

  [[nodiscard]] bool in_hands() const { return units.front().in_hands; }
};

struct RecalledStock {
  StockLevel level;
  LotMatch match = LotMatch::recalled;
  PlaceSort sort = PlaceSort::store;  ///< of its place
  [[nodiscard]] bool quarantined() const { return sort == PlaceSort::quarantine; }
};

/// Pieces on trial with a patient: they are in hands although they were never issued.
struct RecalledLoan {
  Loan loan;
  LotMatch match = LotMatch::recalled;
};

struct Recall {
  ItemCode item;
  std::string lot;  ///< "" for all lots
  Date today;
  /// Those with a unit in hands first; among them whoever comes soonest, then those without a
  /// visit.
  std::vector<RecalledPatient> patients;
  std::vector<RecalledStock> stock;  ///< by place and lot
  std::vector<RecalledLoan> loans;   ///< with pieces outstanding, by number
  /// Drafts and placed lines with pieces still to come. Orders name no lot: any may bring it.
  std::vector<OrderLine> orders;
  std::vector<std::string> other_lots;  ///< of the item, recorded and not touched; sorted

  [[nodiscard]] bool touches_anything() const {
    return !patients.empty() || !stock.empty() || !loans.empty() || !orders.empty();
  }
};

/// `lot` is "" for every lot of the item.
[[nodiscard]] Recall find_recalled(const ItemCode& item, const std::string& lot,
                                   const ItemRecords& records, Date today);

/// The transfers that take the recalled pieces from the shelves to the place "quarantine", out and
/// in for each. Pieces that lie in quarantine already stay, and so do those that are not there to
/// be carried: in transit, on loan, at a supplier. So do those whose lot number is not recorded or
/// only written alike, because they may be another lot.
[[nodiscard]] std::vector<StockMovement> transfers_to_quarantine(const Recall& recall,
                                                                 const std::string& reason);

}  // namespace sparewell::supply
