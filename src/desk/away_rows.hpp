/// Stock that is away and has to be settled: loans, credits of returns, transfers under way.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// A level is what lies in transit.
using Away = std::variant<Loan, SupplierReturn, StockLevel>;

[[nodiscard]] std::vector<Column> away_columns();
/// Loans first, the first due first; then open credits and what is in transit.
[[nodiscard]] std::vector<TableRow> away_rows(const Day& day);
/// The id of its row.
[[nodiscard]] std::string id_of_away(const Away& away);
/// By the id of its row; nullopt when it has been settled meanwhile.
[[nodiscard]] std::optional<Away> find_away(const Day& day, const std::string& id);
/// "Came &back...", "&Credited...", "&Arrived...": the button for the row.
[[nodiscard]] std::string away_action(const std::optional<Away>& away);
/// What suppliers owe in all: "Credits due: 241.00 EUR"; "" for nothing.
[[nodiscard]] std::string credit_sum_words(const Day& day);

}  // namespace sparewell::desk
