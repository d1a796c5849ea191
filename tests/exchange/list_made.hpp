/// A list with everything that lists can hold.
#pragma once

#include "exchange/list_workbook.hpp"

namespace sparewell::exchange::testing {

inline ListWorkbook small_list() {
  ListSheet sheet;
  sheet.name = "Stock";
  sheet.title = "Stock & more";
  sheet.head = {{"Date", make_date(2026, 11, 25)}, {"Place", std::string{"main store"}}};
  sheet.caution = "Do not hand out what is expired.";
  sheet.columns = {{"Item"},
                   {"Use by", ListFormat::date},
                   {"Pieces", ListFormat::whole},
                   {"Unit cost", ListFormat::money},
                   {"Value", ListFormat::money},
                   {"Currency"},
                   {"Secret", ListFormat::whole, true},
                   {"Counted", ListFormat::fill_in},
                   {"Share", ListFormat::decimal},
                   {"Both", ListFormat::decimal}};
  sheet.total = ListTotal{"Total", 0, 4, 5};
  const auto row = [](std::string item, double pieces, Money cost, double share) {
    return ListRow{{std::move(item), make_date(2027, 1, 31), pieces, cost, Product{2, 3},
                    cost.currency.code, pieces, std::monostate{}, share, Sum{{2, 8}}},
                   false};
  };
  sheet.rows = {row("L-1", 3, {41250, {"EUR"}}, 0.25), row("=1+1", 12, {1999, {"EUR"}}, 1.5),
                row("J-1", 2, {5000, {"JPY"}}, 0)};
  sheet.rows.push_back(
      {{std::string{"N-1"}, std::string{"not recorded"}, 4.0, std::monostate{}, std::monostate{},
        std::monostate{}, 4.0, std::monostate{}, 0.5, Sum{{2, 8}}},
       true});
  sheet.closing = {"1 row has no known cost."};
  ListSheet other;
  other.name = "Orders";
  other.title = "Orders";
  other.columns = {{"Order"}};
  other.rows = {{{std::string{"PO-1"}}, false}};
  return {"Stock list", "Example Clinic", make_date(2026, 11, 25), {sheet, other}};
}

}  // namespace sparewell::exchange::testing
