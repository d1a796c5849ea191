/// Cells of somebody else's sheet as values: numbers and dates of a spreadsheet program, or text in
/// a declared form. Each returns an empty reason when the cell was understood.
#pragma once

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "exchange/cell.hpp"
#include "exchange/sheet/sheet_table.hpp"

namespace sparewell::exchange {

/// The text of a cell without spaces around it; "" of a blank one and of an error.
[[nodiscard]] std::string_view sheet_text(const SheetCell& cell);

/// An amount, below zero too. A number with more decimals than the currency has is refused.
[[nodiscard]] Reason read_sheet_money(const SheetCell& cell, const FolderFormat& format,
                                      const Currency& currency, Money& into);
[[nodiscard]] Reason read_sheet_whole(const SheetCell& cell, const FolderFormat& format, int& into);
/// A date of the spreadsheet program, or text in the declared pattern.
[[nodiscard]] Reason read_sheet_date(const SheetCell& cell, const FolderFormat& format, Date& into);

}  // namespace sparewell::exchange
