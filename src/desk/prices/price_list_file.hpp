/// Reads a supplier's price list, whose columns are named as the supplier likes.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "exchange/sheet/sheet_table.hpp"
#include "supply/price_list.hpp"

namespace sparewell::desk {

/// A field and the headings by which it is known, letter case and signs aside. Prices from a
/// quantity on also stand under headings such as "Price from 10" or "10+".
struct PriceField {
  std::string_view name;  ///< as in the catalogue's file
  std::vector<std::string_view> headings;
};
[[nodiscard]] const std::vector<PriceField>& price_fields();

/// "unit_cost=Preis; supplier_item=Artikel" as fields and headings; "" names none.
[[nodiscard]] Expected<std::map<std::string, std::string>> read_headings(std::string_view text);

struct PriceListFile {
  std::string name;
  std::vector<supply::PriceRow> rows;
  std::vector<supply::RefusedPriceRow> refused;
  std::vector<supply::PriceRow> unread;     ///< the numbers of refused rows: these items are listed
  std::map<std::string, std::string> used;  ///< field and the heading that it was read from
  std::vector<std::string> ignored;         ///< headings that are not known
};

/// Looks for the heading row among the first 40: one with a price and with a number of the item.
/// `columns` names headings for fields ("code" is item_code, "price" unit_cost) and goes before the
/// known ones. Amounts are in the currency of the row's cell, of the price's heading ("Price EUR"),
/// or in `otherwise`. Rows with a single filled cell, or without any number and price,
/// are headings in between and left out.
/// Refuses in one sentence: a list without such headings, a field or heading that does not exist,
/// a heading that stands there twice.
[[nodiscard]] Expected<PriceListFile> read_price_list(
    const exchange::SheetTable& table, const Currency& otherwise,
    const std::map<std::string, std::string>& columns, const exchange::FolderFormat& format);

}  // namespace sparewell::desk
