#include "desk/put_away.hpp"

#include <algorithm>
#include <map>

#include "supply/order_life.hpp"

namespace sparewell::desk {
namespace {

using store::Row;
using store::UnitOfWork;

/// The first line that the delivery was matched with.
const OrderLine& matched_line(const ReceivingOutcome& outcome) {
  return outcome.lines[outcome.match.lines.front()];
}

std::vector<Row<OrderPiece>> pieces_of(const UnitOfWork& work, const OrderLine& line) {
  auto rows = work.all<OrderPiece>();
  std::erase_if(rows, [&](const Row<OrderPiece>& row) {
    return row.record.supplier != line.supplier || row.record.order_ref != line.order_ref ||
           row.record.item != line.item;
  });
  return rows;
}

/// The reservations of one item, and how many of their pieces this delivery serves.
class Reserving {
 public:
  Reserving(UnitOfWork& work, const ItemCode& item) : work_{work}, rows_{work.all<Reservation>()} {
    std::erase_if(rows_, [&](const Row<Reservation>& row) { return row.record.item != item; });
  }

  void keep(const OrderPiece& piece, const std::string& place) {
    if (piece.promised && takes_promised(piece.patient)) return;
    const auto same = std::ranges::find_if(rows_, [&](const Row<Reservation>& row) {
      return row.record.patient == piece.patient && row.record.place == place &&
             row.record.needed_on == piece.needed_on;
    });
    if (same == rows_.end()) {
      const Reservation made{piece.patient, piece.item, place, 1, piece.needed_on};
      rows_.push_back({work_.put(made), made});
      return;
    }
    ++same->record.quantity;
    work_.put_instead(same->id, same->record);
  }

 private:
  /// Whether a reservation that stands already speaks of this piece.
  bool takes_promised(const PatientRef& patient) {
    int standing = 0;
    for (const auto& row : rows_) {
      if (row.record.patient == patient) standing += row.record.quantity;
    }
    if (served_[patient] >= standing) return false;
    ++served_[patient];
    return true;
  }

  UnitOfWork& work_;
  std::vector<Row<Reservation>> rows_;
  std::map<PatientRef, int> served_;
};

PutAway put_away(const OrderPiece& piece) {
  return {piece.patient, piece.side, piece.needed_on};
}

}  // namespace

void put_away_for_patients(UnitOfWork& work, ReceivingOutcome& outcome) {
  const auto& delivery = outcome.delivery;
  if (delivery.sound() == 0 || is_quarantine(delivery.place)) return;
  auto rows = pieces_of(work, matched_line(outcome));
  std::vector<OrderPiece> pieces;
  for (const auto& row : rows) pieces.push_back(row.record);
  Reserving reserving{work, outcome.item.code};
  for (const auto at : supply::first_served(pieces, delivery.sound())) {
    OrderPiece& piece = pieces[at];
    piece.put_away_on = delivery.on;
    work.put_instead(rows[at].id, piece);
    reserving.keep(piece, delivery.place);
    outcome.put_away.push_back(put_away(piece));
  }
  if (outcome.put_away.empty()) return;
  for (const auto at : supply::first_served(pieces, static_cast<int>(pieces.size()))) {
    outcome.waiting.push_back(put_away(pieces[at]));
  }
}

void leave_on_back_order(UnitOfWork& work, const ReceivingOutcome& outcome) {
  if (!outcome.receiving.damaged) return;
  const auto promises = work.all<OrderPromise>();
  for (const auto at : outcome.match.lines) {
    const OrderLine& line = outcome.lines[at];
    if (line.received_quantity > 0 || line.outstanding() == 0) continue;
    const auto same = std::ranges::find_if(promises, [&](const Row<OrderPromise>& row) {
      return row.record.supplier == line.supplier && row.record.order_ref == line.order_ref &&
             row.record.item == line.item && row.record.copy == line.copy;
    });
    if (same == promises.end()) {
      work.put(OrderPromise{line.supplier, line.order_ref, line.item, line.copy, {}, true});
    } else {
      OrderPromise changed = same->record;
      changed.on_back_order = true;
      work.put_instead(same->id, changed);
    }
  }
}

}  // namespace sparewell::desk
