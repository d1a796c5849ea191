/// The shelf: lots, and the append-only ledger of movements whose sum the stock is.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

enum class MovementKind {
  receipt,
  issue,
  give_back,  ///< "return": a part came back from a patient or a loan
  transfer,
  count_correction,
  write_off,
  quarantine
};
template <>
std::span<const std::string_view> words<MovementKind>();

/// One lot of one item. Stock without a lot number has an empty lot.
struct Lot {
  ItemCode item;
  std::string lot;
  std::optional<Date> use_by;

  friend auto operator<=>(const Lot&, const Lot&) = default;
};

/// One entry in the ledger; never changed or removed. A mistake is reversed by another movement.
/// Who recorded it, when and why is kept with the unit of work that wrote it.
struct StockMovement {
  Lot lot;
  std::string place;
  MovementKind kind = MovementKind::receipt;
  int quantity = 0;  ///< pieces; negative when they leave the place
  Date on;
  std::string reason;
  std::vector<std::string> serials = {};  ///< of its pieces, as far as they were recorded

  friend bool operator==(const StockMovement&, const StockMovement&) = default;
};

/// What a person found when they counted one lot at one place, right or wrong.
struct ShelfCountRecord {
  Lot lot;
  std::string place;
  Date on;
  int recorded = 0;  ///< pieces by the ledger before the count
  int counted = 0;   ///< pieces found
  std::string by;    ///< who counted
  std::string remark;

  friend bool operator==(const ShelfCountRecord&, const ShelfCountRecord&) = default;
};

/// Pieces of one lot at one place: the sum of its movements.
struct StockLevel {
  Lot lot;
  std::string place;
  int quantity = 0;

  friend bool operator==(const StockLevel&, const StockLevel&) = default;
};

/// Places whose name says "quarantine" hold stock that may not be handed out.
[[nodiscard]] bool is_quarantine(std::string_view place);

}  // namespace sparewell
