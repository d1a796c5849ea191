#include "supply/stock_move.hpp"

#include <algorithm>

namespace sparewell::supply {

Place StockView::place(const std::string& name) const {
  const auto found = std::ranges::find(places, name, &Place::name);
  return found == places.end() ? Place{name, sort_of_place(places, name), {}} : *found;
}

tl::unexpected<MoveRefusal> refuse_move(MoveRefusal::Kind kind, const Pieces& wanted,
                                        std::string to, std::vector<StockLevel> there) {
  return tl::unexpected{MoveRefusal{kind, wanted, std::move(to), std::move(there)}};
}

Decided<StockLevel> find_pieces(const StockView& view, const Pieces& wanted) {
  if (wanted.quantity < 1) return refuse_move(MoveRefusal::no_quantity, wanted);
  if (wanted.place.empty()) return refuse_move(MoveRefusal::no_place, wanted);
  std::vector<StockLevel> meant;
  for (const StockLevel& level : view.levels) {
    const bool of_lot = (!wanted.lot || level.lot.lot == *wanted.lot) &&
                        (!wanted.use_by || level.lot.use_by == wanted.use_by);
    if (level.lot.item == wanted.item && level.place == wanted.place && level.quantity > 0 &&
        of_lot) {
      meant.push_back(level);
    }
  }
  if (meant.empty()) return refuse_move(MoveRefusal::none_there, wanted, {}, view.levels);
  if (meant.size() > 1) return refuse_move(MoveRefusal::several_lots, wanted, {}, meant);
  if (meant.front().quantity < wanted.quantity) {
    return refuse_move(MoveRefusal::too_few, wanted, {}, meant);
  }
  meant.front().quantity = wanted.quantity;
  return meant.front();
}

StockMove carry(const StockView& view, const StockLevel& pieces, const Place& to, MovementKind kind,
                Date on, const std::string& reason) {
  StockMove made;
  made.movements.push_back({pieces.lot, pieces.place, kind, -pieces.quantity, on, reason});
  made.movements.push_back({pieces.lot, to.name, kind, pieces.quantity, on, reason});
  if (std::ranges::find(view.places, to.name, &Place::name) == view.places.end()) {
    made.new_places.push_back(to);
  }
  return made;
}

}  // namespace sparewell::supply
