#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

Column<StockCount> item_column() {
  Column<StockCount> made;
  made.name = "item_code";
  made.need = Need::required;
  made.read = [](StockCount& count, const Cell& cell) { return read_name(cell, count.lot.item); };
  return made;
}

Column<StockCount> lot_column() {
  Column<StockCount> made;
  made.name = "lot";
  made.read = [](StockCount& count, const Cell& cell) { return read_name(cell, count.lot.lot); };
  return made;
}

Column<StockCount> use_by_column() {
  Column<StockCount> made;
  made.name = "use_by";
  made.read = [](StockCount& count, const Cell& cell) {
    Date date;
    auto reason = read_date(cell, date);
    if (reason.empty()) count.lot.use_by = date;
    return reason;
  };
  return made;
}

}  // namespace

const Table<StockCount>& stock_table() {
  static const Table<StockCount> table{
      .file = "stock.csv",
      .columns = {item_column().key(), lot_column().key(), use_by_column().key(),
                  column("quantity", Need::required, &StockCount::quantity,
                         whole_between(0, 100'000, to_say("0 to 100000 pieces"))),
                  name_column("place", Need::optional, &StockCount::place).key()}};
  return table;
}

}  // namespace sparewell::exchange
