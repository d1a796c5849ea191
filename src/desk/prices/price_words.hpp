/// A price list in words: what changes, what is doubtful, what is missing.
#pragma once

#include <string>
#include <vector>

#include "desk/prices/price_update.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// "unit cost 412.00 EUR to 430.00 EUR, up 4.4 %", "pack size 1 to 6": one entry a field.
[[nodiscard]] std::vector<std::string> price_changes(const supply::PriceChange& change);
/// "the price changes by more than half", one entry a doubt; empty when there is none.
[[nodiscard]] std::vector<std::string> price_doubts(const supply::PriceChange& change);
/// For --json: "large_change".
[[nodiscard]] std::string price_doubt_key(supply::PriceDoubt doubt);

/// "L-1: unit cost ...; pack size ... Look at it: ...".
[[nodiscard]] std::string price_line(const supply::PriceChange& change);
[[nodiscard]] std::string refused_price_line(const supply::RefusedPriceRow& refused);

/// How many change, are doubtful, unknown, missing, refused; and what was written.
[[nodiscard]] std::string price_summary(const PriceListOutcome& outcome);
/// The whole outcome, in lines.
[[nodiscard]] std::vector<std::string> price_lines(const PriceListOutcome& outcome);

/// The same as a table; a row's id is its position.
[[nodiscard]] Table price_table(const PriceListOutcome& outcome);

}  // namespace sparewell::desk
