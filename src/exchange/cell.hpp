/// Reads one cell of a clinic file into a value of the clinic's vocabulary. Every function returns
/// an empty reason when the cell was understood, else what is wrong and what to do.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/item.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/say.hpp"
#include "clinic/supplier.hpp"
#include "clinic/words.hpp"
#include "exchange/folder_format.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {

/// A cell that is not blank, with what is needed to understand it.
struct Cell {
  std::string_view text;  ///< without spaces around it
  const FolderFormat& format;
  const Currency& currency;  ///< of the amounts in this row
};

/// What is wrong and what to do, without file, line and column; "" when nothing is.
using Reason = std::string;

/// Free text, as written. Refuses control characters and more than 1000 bytes.
[[nodiscard]] Reason read_text(const Cell& cell, std::string& into);
/// Text that names something: free text without line breaks.
[[nodiscard]] Reason read_name(const Cell& cell, std::string& into);
template <class Tag>
[[nodiscard]] Reason read_name(const Cell& cell, Ref<Tag>& into) {
  return read_name(cell, into.text);
}
/// Words that people read, such as a person's name: a line break or tab with the spaces around it
/// counts as one space.
[[nodiscard]] Reason read_words(const Cell& cell, std::string& into);
/// A date in the declared pattern, 1900 to 2199.
[[nodiscard]] Reason read_date(const Cell& cell, Date& into);
/// A decimal number with the declared decimal sign.
[[nodiscard]] Reason read_number(const Cell& cell, double& into);
/// A whole number; "12.0" is one.
[[nodiscard]] Reason read_whole(const Cell& cell, int& into);
/// yes, true, y, 1 or no, false, n, 0.
[[nodiscard]] Reason read_yes_no(const Cell& cell, bool& into);
/// Parts separated by ';'; empty parts are left out.
[[nodiscard]] Reason read_list(const Cell& cell, std::vector<std::string>& into);
/// An amount in the row's currency; below zero it takes an earlier one back.
[[nodiscard]] Reason read_signed_money(const Cell& cell, Money& into);
/// An amount of zero or more in the row's currency.
[[nodiscard]] Reason read_money(const Cell& cell, Money& into);
[[nodiscard]] Reason read_currency(const Cell& cell, Currency& into);
[[nodiscard]] Reason read_order_days(const Cell& cell, OrderDays& into);
/// "10:4.50;50:4.20": rising quantities of 1 or more, each with its unit cost.
[[nodiscard]] Reason read_price_breaks(const Cell& cell, std::vector<PriceBreak>& into);

template <class Enum>
[[nodiscard]] Reason read_word(const Cell& cell, Enum& into) {
  const auto value = parse_word<Enum>(cell.text);
  if (!value) {
    return say("'{}' is not one of the allowed words; use one of: {}", excerpt(cell.text),
               allowed_words<Enum>());
  }
  into = *value;
  return {};
}

/// Reads a number between `least` and `most`, both allowed; `what` names it in the refusal, in
/// English, as in to_say("hours a day, 0 to 24").
[[nodiscard]] std::function<Reason(const Cell&, double&)> number_between(double least, double most,
                                                                         std::string what);
[[nodiscard]] std::function<Reason(const Cell&, int&)> whole_between(int least, int most,
                                                                     std::string what);

/// What is doubtful about a trade item number (GTIN-8, -12, -13 or -14), or "": other characters
/// than digits, another length, or a check digit that does not fit (GS1 General Specifications,
/// section 7.9: weights 3 and 1 from the right, modulo 10).
[[nodiscard]] std::string gtin_doubt(std::string_view gtin);

}  // namespace sparewell::exchange
