#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

/// A received_quantity that was left blank; no file can say it.
constexpr int not_said = -1;

std::optional<Fault> check_receipt(OrderLine& line) {
  if (line.received_on && *line.received_on < line.ordered_on) {
    return Fault{"received_on", say("{} is before ordered_on {}; correct one of them",
                                    iso_text(*line.received_on), iso_text(line.ordered_on))};
  }
  if (line.received_quantity == not_said) {
    line.received_quantity = line.received_on ? line.quantity : 0;
  } else if (line.received_on && line.received_quantity == 0) {
    return Fault{"received_quantity",
                 said("is 0 although received_on is set; clear received_on, or write what came")};
  } else if (!line.received_on && line.received_quantity > 0) {
    return Fault{"received_on", said("is empty although received_quantity is set; write the date")};
  }
  return std::nullopt;
}

std::vector<Column<OrderLine>> order_line_columns() {
  const auto pieces = whole_between(0, 1'000'000, to_say("0 pieces or more"));
  auto received_on = column("received_on", Need::optional, &OrderLine::received_on, read_date);
  auto received_quantity =
      column("received_quantity", Need::optional, &OrderLine::received_quantity, pieces);
  // The quantity means something with the date only: a file without the date says nothing of both.
  received_on.keep = [](OrderLine& to, const OrderLine& from) {
    to.received_on = from.received_on;
    to.received_quantity = from.received_quantity;
  };
  received_quantity.keep = nullptr;
  return {name_column("supplier", Need::required, &OrderLine::supplier).key(),
          name_column("order_ref", Need::required, &OrderLine::order_ref).key(),
          name_column("item_code", Need::required, &OrderLine::item).key(),
          column("ordered_on", Need::required, &OrderLine::ordered_on, read_date),
          column("quantity", Need::required, &OrderLine::quantity, pieces),
          column("unit_cost", Need::optional, &OrderLine::unit_cost, read_money),
          std::move(received_on),
          std::move(received_quantity)};
}

}  // namespace

const Table<OrderLine>& orders_table() {
  static const Table<OrderLine> table{
      .file = "orders.csv",
      .columns = order_line_columns(),
      .copies = true,
      .has_amounts = true,
      .start = [](OrderLine& line, const Currency&) { line.received_quantity = not_said; },
      .check = check_receipt};
  return table;
}

}  // namespace sparewell::exchange
