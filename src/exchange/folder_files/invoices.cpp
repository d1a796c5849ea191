#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<InvoiceLine>& invoices_table() {
  static const Table<InvoiceLine> table{
      .file = "invoices.csv",
      .columns = {name_column("supplier", Need::required, &InvoiceLine::supplier).key(),
                  name_column("invoice_ref", Need::required, &InvoiceLine::invoice_ref).key(),
                  name_column("order_ref", Need::optional, &InvoiceLine::order_ref).key(),
                  name_column("item_code", Need::required, &InvoiceLine::item).key(),
                  column("quantity", Need::required, &InvoiceLine::quantity,
                         whole_between(0, 1'000'000, to_say("0 pieces or more"))),
                  column("unit_cost", Need::optional, &InvoiceLine::unit_cost, read_money),
                  column("invoiced_on", Need::optional, &InvoiceLine::invoiced_on, read_date),
                  column("freight", Need::optional, &InvoiceLine::freight, read_money)},
      .copies = true,
      .has_amounts = true};
  return table;
}

}  // namespace sparewell::exchange
