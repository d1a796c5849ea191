#include "desk/put_away.hpp"

#include <algorithm>

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

/// The reservations of one item, and for how many of their pieces one has come already.
class Reserving {
 public:
  Reserving(UnitOfWork& work, const ItemCode& item) : work_{work} {
    auto pieces = work.all<OrderPiece>();
    for (auto& row : work.all<Reservation>()) {
      if (row.record.item != item) continue;
      standing_.push_back({std::move(row), 0});
      auto& [kept, come] = standing_.back();
      std::erase_if(pieces, [&](const Row<OrderPiece>& piece) {
        const bool for_this = piece.record.put_away_on && come < kept.record.quantity &&
                              piece.record.item == item &&
                              piece.record.patient == kept.record.patient &&
                              piece.record.needed_on == kept.record.needed_on;
        if (for_this) ++come;
        return for_this;
      });
    }
    std::ranges::stable_sort(standing_, {},
                             [](const Standing& each) { return each.row.record.needed_on; });
  }

  /// A piece that a reservation speaks of already is kept for that one, and gets its day.
  void keep(OrderPiece& piece, const std::string& place) {
    const auto promised = std::ranges::find_if(standing_, [&](const Standing& each) {
      return each.row.record.patient == piece.patient && each.come < each.row.record.quantity;
    });
    if (promised != standing_.end()) {
      ++promised->come;
      piece.promised = true;
      piece.needed_on = promised->row.record.needed_on;
      return;
    }
    const auto same = std::ranges::find_if(standing_, [&](const Standing& each) {
      return each.row.record.patient == piece.patient && each.row.record.place == place &&
             each.row.record.needed_on == piece.needed_on;
    });
    if (same == standing_.end()) {
      const Reservation made{piece.patient, piece.item, place, 1, piece.needed_on};
      standing_.push_back({{work_.put(made), made}, 1});
      return;
    }
    ++same->row.record.quantity;
    ++same->come;
    work_.put_instead(same->row.id, same->row.record);
  }

 private:
  struct Standing {
    Row<Reservation> row;
    int come = 0;
  };

  UnitOfWork& work_;
  std::vector<Standing> standing_;
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
    outcome.put_away.push_back(put_away(piece));
    piece.put_away_on = delivery.on;
    reserving.keep(piece, delivery.place);
    work.put_instead(rows[at].id, piece);
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
