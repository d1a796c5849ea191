#include "supply/transfer.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace sparewell::supply {
namespace {

/// The one level that lies in the transit place and answers to the arrival, whatever its quantity.
Decided<StockLevel> on_the_way(const StockView& view, const Pieces& wanted) {
  auto one = wanted;
  one.quantity = 1;
  const auto found = find_pieces(view, one);
  if (!found) return tl::unexpected{found.error()};
  return *std::ranges::find_if(view.levels, [&](const StockLevel& level) {
    return level.lot == found->lot && level.place == found->place;
  });
}

}  // namespace

Decided<StockMove> transfer(const StockView& view, const Pieces& wanted, const std::string& to,
                            Travel travel, Date on, const std::string& reason) {
  if (to.empty()) return refuse_move(MoveRefusal::no_target, wanted);
  if (to == wanted.place) return refuse_move(MoveRefusal::same_place, wanted, to);
  const Place from = view.place(wanted.place);
  const Place target = view.place(to);
  if (is_kept_by_program(from)) return refuse_move(MoveRefusal::to_be_settled, wanted, to);
  if (from.sort == PlaceSort::quarantine) return refuse_move(MoveRefusal::held_back, wanted, to);
  if (is_name_of_program(to)) return refuse_move(MoveRefusal::target_no_place, wanted, to);
  if (travel == Travel::sent && target.sort != PlaceSort::store) {
    return refuse_move(MoveRefusal::target_no_store, wanted, to);
  }
  if (target.sort == PlaceSort::quarantine) {
    return refuse_move(MoveRefusal::target_no_store, wanted, to);
  }
  const auto pieces = find_pieces(view, wanted);
  if (!pieces) return tl::unexpected{pieces.error()};
  const auto why = reason.empty() ? fmt::format("moved to {}", to) : reason;
  const Place next = travel == Travel::sent ? transit_place(to) : target;
  auto made = carry(view, *pieces, next, MovementKind::transfer, on, why);
  // A store that only its stock makes known needs no record.
  std::erase_if(made.new_places, [&](const Place& place) { return place == target; });
  return made;
}

Decided<ArrivalMove> arrive(const StockView& view, const Arrival& arrival, Date on) {
  const Place way = transit_place(arrival.to);
  const Pieces wanted{arrival.item, arrival.lot, arrival.use_by, way.name,
                      arrival.quantity.value_or(0)};
  if (arrival.to.empty()) return refuse_move(MoveRefusal::no_target, wanted);
  if (arrival.quantity &&
      (*arrival.quantity < 0 || (*arrival.quantity == 0 && !arrival.rest_is_lost))) {
    return refuse_move(MoveRefusal::no_quantity, wanted, arrival.to);
  }
  const auto level = on_the_way(view, wanted);
  if (!level) return tl::unexpected{level.error()};
  const int sent = level->quantity;
  const int came = arrival.quantity.value_or(sent);
  ArrivalMove made;
  made.arrived = std::min(came, sent);
  made.extra = came - made.arrived;
  made.lost = arrival.rest_is_lost ? sent - made.arrived : 0;
  made.still_out = sent - made.arrived - made.lost;
  if (made.extra + made.lost > 0 && arrival.reason.empty()) {
    return refuse_move(MoveRefusal::no_reason, wanted, arrival.to, {*level});
  }
  const auto why =
      arrival.reason.empty() ? fmt::format("arrived at {}", arrival.to) : arrival.reason;
  auto& movements = made.move.movements;
  if (made.arrived > 0) {
    movements = carry(view, {level->lot, way.name, made.arrived}, view.place(arrival.to),
                      MovementKind::transfer, on, why)
                    .movements;
  }
  if (made.lost > 0) {
    movements.push_back({level->lot, way.name, MovementKind::write_off, -made.lost, on,
                         fmt::format("did not arrive: {}", why)});
  }
  if (made.extra > 0) {
    movements.push_back({level->lot, arrival.to, MovementKind::count_correction, made.extra, on,
                         fmt::format("more arrived than were sent: {}", why)});
  }
  return made;
}

}  // namespace sparewell::supply
