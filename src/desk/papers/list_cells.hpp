/// Cells that the lists on paper have in common.
#pragma once

#include <string>

#include "clinic/say.hpp"
#include "clinic/stock.hpp"
#include "exchange/list_workbook.hpp"

namespace sparewell::desk {

/// A day, or words where none is recorded.
inline exchange::ListCell day_or(const std::optional<Date>& date, const std::string& otherwise) {
  if (date) return *date;
  return otherwise;
}

inline exchange::ListCell pieces_cell(int count) {
  return static_cast<double>(count);
}

/// For lots and dates that are not recorded, shown with said; a part without a date may have any.
inline constexpr auto no_lot_words = to_say("none recorded");
inline constexpr auto no_date_words = to_say("not recorded");

inline std::string lot_or_none(const std::string& lot) {
  return lot.empty() ? said(no_lot_words) : lot;
}

}  // namespace sparewell::desk
