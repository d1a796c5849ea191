/// The words for months of the books and what has changed in them.
#pragma once

#include <string>
#include <vector>

#include "desk/billing/month_close.hpp"

namespace sparewell::desk {

/// "October 2026".
[[nodiscard]] std::string month_title(Date month);
/// "2026-10".
[[nodiscard]] std::string month_key(Date month);
/// Reads "2026-10"; its first day.
[[nodiscard]] std::optional<Date> parse_month(const std::string& text);

/// "Parts handed out", "Claim lines" ...
[[nodiscard]] std::string entry_title(BookEntry entry);
/// "October 2026, closed on 2 Nov 2026 by Anna."; from the second time on with its number.
[[nodiscard]] std::string close_words(const MonthClose& close);
/// "Claim lines: 120 records, 134 pieces, 45,300.00 EUR." for each entry and currency, and how many
/// have no amount.
[[nodiscard]] std::vector<std::string> total_lines(const std::vector<ClosedEntry>& entries);
/// "Added to claim lines: ..., 1 piece, 300.00 EUR."
[[nodiscard]] std::string change_words(const billing::BookChange& change);
/// What changed, in money; that parts are worth something else; or that nothing has changed.
[[nodiscard]] std::vector<std::string> summary_lines(const MonthChanges& changes);
/// "12 findings of this month or earlier are open."; "" for none.
[[nodiscard]] std::string still_open_words(int open);

}  // namespace sparewell::desk
