/// Cells and sheets that the reports of billing have in common.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "clinic/say.hpp"
#include "desk/wording.hpp"
#include "exchange/list_workbook.hpp"

namespace sparewell::desk {

/// Blank when not known.
inline exchange::ListCell money_cell(const std::optional<Money>& money) {
  if (money) return *money;
  return {};
}

/// The amount as a number in a row of its currency, otherwise in words with its own.
inline exchange::ListCell money_cell_in(const std::optional<Money>& money,
                                        const std::optional<Currency>& row) {
  if (!money) return {};
  if (row && money->currency == *row) return *money;
  return amount_words(*money);
}

inline exchange::ListCell currency_cell(const std::optional<Currency>& currency) {
  if (currency) return currency->code;
  return {};
}

/// "payer not recorded" where none is recorded.
inline std::string payer_words(const std::string& payer) {
  return payer.empty() ? said("payer not recorded") : payer;
}

inline exchange::ListSheet report_sheet(std::string name, std::string title, Date today,
                                        std::vector<exchange::ListColumn> columns) {
  exchange::ListSheet sheet;
  sheet.name = std::move(name);
  sheet.title = std::move(title);
  sheet.head = {{said("Date"), today}};
  sheet.columns = std::move(columns);
  return sheet;
}

}  // namespace sparewell::desk
