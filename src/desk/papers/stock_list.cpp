#include "desk/papers/stock_list.hpp"

#include <algorithm>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/papers/list_cells.hpp"
#include "desk/part_words.hpp"
#include "desk/shelf_page.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using exchange::ListFormat;
using exchange::ListSheet;

/// Columns of the list, A to J.
enum StockColumn : std::size_t {
  place,
  item,
  description,
  lot,
  use_by,
  state,
  pieces,
  cost,
  value,
  code
};

exchange::ListRow row_of(const StockLevel& level, const Clinic& clinic, const Item* known,
                         Date today) {
  const auto standing = lot_state(level, clinic.places, today);
  const auto words = standing == LotState::usable && !level.lot.use_by
                         ? std::string{said("no use-by date recorded: look at the part")}
                         : lot_state_words(standing);
  exchange::ListRow row;
  row.strong = standing != LotState::usable;
  row.cells = {level.place,
               level.lot.item.text,
               known ? item_words(*known) : std::string{said("not in the catalogue")},
               lot_or_none(level.lot.lot),
               day_or(level.lot.use_by, said(no_date_words)),
               capitalised(words),
               pieces_cell(level.quantity)};
  if (known && known->unit_cost) {
    row.cells.insert(row.cells.end(), {*known->unit_cost, exchange::Product{pieces, cost},
                                       known->unit_cost->currency.code});
  } else {
    row.cells.resize(code + 1);
  }
  return row;
}

std::vector<std::string> closing_words(long unknown) {
  if (unknown == 0) return {};
  return {say_n("{} row has no known cost and is not in the totals.",
                "{} rows have no known cost and are not in the totals.",
                static_cast<unsigned long>(unknown), number_words(unknown))};
}

}  // namespace

exchange::ListWorkbook stock_list(const Clinic& clinic, Date today) {
  ListSheet sheet;
  sheet.name = said("Stock");
  sheet.title = say("Stock list, {}", date_words(today));
  sheet.head = {{said("Date"), today}};
  sheet.caution = said(
      "Do not hand out what is expired or in quarantine. Dates and lots are those recorded: "
      "compare "
      "them with the part.");
  sheet.columns = {{said("Place")},
                   {said("Item")},
                   {said("Description")},
                   {said("Lot")},
                   {said("Use by"), ListFormat::date},
                   {said("State")},
                   {said("Pieces"), ListFormat::whole},
                   {said("Unit cost"), ListFormat::money},
                   {said("Value"), ListFormat::money},
                   {said("Currency")}};
  sheet.total = exchange::ListTotal{said("Total of known costs"), description, value, code};
  auto levels = clinic.shelf;
  std::ranges::sort(levels, {},
                    [](const StockLevel& level) { return std::tie(level.place, level.lot); });
  const ClinicIndex index{clinic};
  long unknown = 0;
  for (const auto& level : levels) {
    const auto* known = index.item(level.lot.item);
    if (known == nullptr || !known->unit_cost) ++unknown;
    sheet.rows.push_back(row_of(level, clinic, known, today));
  }
  if (unknown == 0) sheet.total->label = said("Total");
  sheet.closing = closing_words(unknown);
  return {said("Stock list"), clinic.settings.name, today, {std::move(sheet)}};
}

}  // namespace sparewell::desk
