/// Columns of lots, and of the ledger read together with its lots.
#pragma once

#include "clinic/say.hpp"
#include "clinic/stock.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<Lot> {
  static constexpr Subject subject{to_say("lot"), to_say("item, lot number and use-by date")};
  static constexpr const char* name = "lots";

  template <class Fields, class L>
  static void describe(Fields& f, L& lot) {
    f.reference("item_id", lot.item);
    f("lot", lot.lot);
    f("use_by", lot.use_by);
  }
};

template <>
struct Table<StockMovement> {
  static constexpr Subject subject{to_say("movement"), ""};
  static constexpr const char* name =
      "(SELECT movements.id, item_id, lot, use_by, place, kind, quantity, moved_on, reason"
      " FROM movements JOIN lots ON lots.id = lot_id)";

  template <class Fields, class M>
  static void describe(Fields& f, M& movement) {
    Table<Lot>::describe(f, movement.lot);
    f("place", movement.place);
    f("kind", movement.kind);
    f("quantity", movement.quantity);
    f("moved_on", movement.on);
    f("reason", movement.reason);
  }
};

template <>
struct Table<ShelfCountRecord> {
  static constexpr Subject subject{to_say("count"), ""};
  static constexpr const char* name =
      "(SELECT counts.id, item_id, lot, use_by, place, counted_on, recorded, counted, counted_by,"
      " remark FROM counts JOIN lots ON lots.id = lot_id)";

  template <class Fields, class C>
  static void describe(Fields& f, C& count) {
    Table<Lot>::describe(f, count.lot);
    f("place", count.place);
    f("counted_on", count.on);
    f("recorded", count.recorded);
    f("counted", count.counted);
    f("counted_by", count.by);
    f("remark", count.remark);
  }
};

template <>
struct Table<StockLevel> {
  static constexpr Subject subject{to_say("stock level"), ""};
  static constexpr const char* name =
      "(SELECT lots.id, item_id, lot, use_by, place, quantity"
      " FROM shelf JOIN lots ON lots.id = lot_id)";

  template <class Fields, class L>
  static void describe(Fields& f, L& level) {
    Table<Lot>::describe(f, level.lot);
    f("place", level.place);
    f("quantity", level.quantity);
  }
};

}  // namespace sparewell::store::sqlite
