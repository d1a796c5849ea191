#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<Supplier>& suppliers_table() {
  static const Table<Supplier> table{
      .file = "suppliers.csv",
      .columns = {name_column("supplier", Need::required, &Supplier::name).key(),
                  column("order_days", Need::optional, &Supplier::order_days, read_order_days),
                  column("currency", Need::optional, &Supplier::currency, read_currency),
                  column("freight", Need::optional, &Supplier::freight, read_money),
                  column("free_freight_from", Need::optional, &Supplier::free_freight_from,
                         read_money),
                  name_column("email", Need::optional, &Supplier::email),
                  name_column("account", Need::optional, &Supplier::account)},
      .has_amounts = true,
      .start = [](Supplier& supplier, const Currency& currency) { supplier.currency = currency; }};
  return table;
}

}  // namespace sparewell::exchange
