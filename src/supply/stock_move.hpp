/// What a movement of stock between places is decided from, and what it is decided to be.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "clinic/place.hpp"
#include "clinic/stock.hpp"

namespace sparewell::supply {

/// The stock of one item, and the recorded places.
struct StockView {
  std::vector<StockLevel> levels;
  std::vector<Place> places;

  /// The recorded place, or what its name alone says.
  [[nodiscard]] Place place(const std::string& name) const;
};

/// Pieces that somebody names.
struct Pieces {
  ItemCode item;
  std::optional<std::string> lot;  ///< empty: the only lot that lies there
  std::optional<Date> use_by;      ///< tells apart lots of one number
  std::string place;
  int quantity = 0;
};

/// Why nothing is moved; desk/ puts it into words.
struct MoveRefusal {
  enum Kind {
    no_quantity,           ///< less than one piece
    no_place,              ///< the place where they lie is not named
    no_target,             ///< the place where they should go is not named
    no_reason,             ///< this has to be explained
    none_there,            ///< nothing of the item, or of the lot, lies at the place
    several_lots,          ///< name the lot: `there` has them
    too_few,               ///< `there` has the one level
    same_place,            ///< from and to are one
    held_back,             ///< it lies in quarantine: it has to be released
    not_held_back,         ///< it does not lie in quarantine
    target_no_store,       ///< `to` is not a store
    target_not_held_back,  ///< `to` is not a quarantine
    target_no_place,       ///< stock is never put there by hand: on loan, in transit, at supplier
    to_be_settled,         ///< it is in transit, on loan or at a supplier and has its own way back
    not_expired,           ///< `there` has the level with its use-by date
    expired                ///< the same: it may not be worn any more
  };
  Kind kind = no_quantity;
  Pieces wanted;
  std::string to;
  std::vector<StockLevel> there;
};

template <class T>
using Decided = tl::expected<T, MoveRefusal>;

/// What is to be written, all or nothing.
struct StockMove {
  std::vector<StockMovement> movements;
  std::vector<Place> new_places;  ///< to be recorded first
};

/// The lot that is meant, `quantity` being the pieces wanted. Refuses what is not there.
[[nodiscard]] Decided<StockLevel> find_pieces(const StockView& view, const Pieces& wanted);

/// The two movements that carry `pieces` from where they lie to `to`.
[[nodiscard]] StockMove carry(const StockView& view, const StockLevel& pieces, const Place& to,
                              MovementKind kind, Date on, const std::string& reason);

[[nodiscard]] tl::unexpected<MoveRefusal> refuse_move(MoveRefusal::Kind kind, const Pieces& wanted,
                                                      std::string to = {},
                                                      std::vector<StockLevel> there = {});

}  // namespace sparewell::supply
