#include "supply/holding_back.hpp"

#include <fmt/format.h>

namespace sparewell {

template <>
std::span<const std::string_view> words<supply::WriteOff>() {
  static constexpr std::array<std::string_view, 3> names{to_say("expired"), to_say("damaged"),
                                                         to_say("lost")};
  return names;
}

namespace supply {

Decided<StockMove> quarantine(const StockView& view, const Pieces& wanted, const std::string& to,
                              Date on, const std::string& reason) {
  const Place target = view.place(to.empty() ? usual_quarantine : to);
  const Place from = view.place(wanted.place);
  if (is_kept_by_program(from)) return refuse_move(MoveRefusal::to_be_settled, wanted, target.name);
  if (target.sort != PlaceSort::quarantine) {
    return refuse_move(MoveRefusal::target_not_held_back, wanted, target.name);
  }
  if (target.name == from.name) return refuse_move(MoveRefusal::same_place, wanted, target.name);
  if (reason.empty()) return refuse_move(MoveRefusal::no_reason, wanted, target.name);
  const auto pieces = find_pieces(view, wanted);
  if (!pieces) return tl::unexpected{pieces.error()};
  return carry(view, *pieces, target, MovementKind::quarantine, on, reason);
}

Decided<StockMove> release(const StockView& view, const Pieces& wanted, const std::string& to,
                           Date on, const std::string& reason) {
  if (to.empty()) return refuse_move(MoveRefusal::no_target, wanted);
  const Place target = view.place(to);
  if (view.place(wanted.place).sort != PlaceSort::quarantine) {
    return refuse_move(MoveRefusal::not_held_back, wanted, to);
  }
  if (target.sort != PlaceSort::store) return refuse_move(MoveRefusal::target_no_store, wanted, to);
  if (reason.empty()) return refuse_move(MoveRefusal::no_reason, wanted, to);
  const auto pieces = find_pieces(view, wanted);
  if (!pieces) return tl::unexpected{pieces.error()};
  auto made = carry(view, *pieces, target, MovementKind::quarantine, on, reason);
  made.new_places.clear();
  return made;
}

Decided<StockMove> write_off(const StockView& view, const Pieces& wanted, WriteOff why, Date on,
                             const std::string& note) {
  if (is_kept_by_program(view.place(wanted.place))) {
    return refuse_move(MoveRefusal::to_be_settled, wanted);
  }
  const auto pieces = find_pieces(view, wanted);
  if (!pieces) return tl::unexpected{pieces.error()};
  const auto& use_by = pieces->lot.use_by;
  if (why == WriteOff::expired && (!use_by || *use_by >= on)) {
    return refuse_move(MoveRefusal::not_expired, wanted, {}, {*pieces});
  }
  const auto reason =
      note.empty() ? std::string{word(why)} : fmt::format("{}: {}", word(why), note);
  StockMove made;
  made.movements.push_back(
      {pieces->lot, pieces->place, MovementKind::write_off, -pieces->quantity, on, reason});
  return made;
}

}  // namespace supply
}  // namespace sparewell
