/// The page "Shelf": what is there, what of it counts, and what is on its way.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// Why pieces on a shelf may not be handed out, or not for long.
enum class LotState {
  usable,
  soon,     ///< usable today, but its use-by date comes within `soon_days`
  expired,  ///< its use-by date lies before today
  quarantined,
  in_transit,  ///< usable as soon as it arrives
  on_loan,
  at_supplier
};
inline constexpr int soon_days = 60;
[[nodiscard]] LotState lot_state(const StockLevel& level, std::span<const Place> places,
                                 Date today);
/// "usable", "use by soon", "expired", "in quarantine".
[[nodiscard]] std::string lot_state_words(LotState state);

/// One item's stock over all places.
struct ShelfCount {
  int usable = 0;  ///< with those to be used soon
  int soon = 0;
  int expired = 0;
  int quarantined = 0;
  int in_transit = 0;  ///< usable ones
  int on_loan = 0;
  int at_supplier = 0;
  int on_order = 0;
  int reserved = 0;
  std::optional<Date> use_by;  ///< the earliest of the usable lots
};

struct ShelfDetail {
  std::string title;
  std::string summary;                ///< one or two sentences
  std::vector<TableRow> lots;         ///< for lot_columns()
  std::vector<TableRow> open_orders;  ///< for open_order_columns()
};

class ShelfPage {
 public:
  /// Bit of Table::require: items that are low, out, or to be ordered.
  static constexpr unsigned is_low = 1;

  ShelfPage();

  void show(DayPtr day);
  /// A row's id is the item's code.
  [[nodiscard]] Table& table() { return table_; }
  [[nodiscard]] const Table& table() const { return table_; }
  [[nodiscard]] std::string count_shown() const;
  [[nodiscard]] std::string empty_words() const;
  [[nodiscard]] ShelfDetail detail(const std::string& item) const;

  /// The lot of the item that has this row id in ShelfDetail::lots.
  [[nodiscard]] std::optional<StockLevel> level(const std::string& item,
                                                const std::string& id) const;

  /// The id of the first row in ShelfDetail::lots that is of this lot; "" for none, or no lot.
  [[nodiscard]] std::string first_row_of(const std::string& item, const std::string& lot) const;

  [[nodiscard]] static std::vector<Column> lot_columns();
  [[nodiscard]] static std::vector<Column> open_order_columns();

 private:
  DayPtr day_;
  Table table_;
};

/// By item code, for every item of the catalogue.
[[nodiscard]] std::unordered_map<ItemCode, ShelfCount> shelf_counts(const Day& day);

}  // namespace sparewell::desk
