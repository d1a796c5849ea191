/// Why stock is not moved, a sentence each, with what lies there and what to do.
#pragma once

#include <optional>
#include <string>

#include "store/port.hpp"
#include "supply/lending.hpp"
#include "supply/supplier_credit.hpp"
#include "supply/transfer.hpp"

namespace sparewell::desk {

[[nodiscard]] std::string move_refusal_words(const supply::MoveRefusal& refusal,
                                             const supply::StockView& view);
[[nodiscard]] std::string arrival_refusal_words(const supply::MoveRefusal& refusal,
                                                const supply::Arrival& arrival,
                                                const supply::StockView& view);
[[nodiscard]] std::string loan_refusal_words(const supply::LoanRefusal& refusal, const Loan& loan);
[[nodiscard]] std::string credit_refusal_words(const supply::CreditRefusal& refusal,
                                               const SupplierReturn& sent);
/// "" when the booking may be taken back.
[[nodiscard]] std::string reversal_refusal(const store::Booking& booking,
                                           const std::string& reason);
/// The level, which has too few pieces for the booking to be taken back.
[[nodiscard]] std::string moved_on_words(const store::Booking& booking, const StockLevel& level);
/// "" when the place may be recorded so; `there` are the pieces that lie at it.
[[nodiscard]] std::string place_refusal(const Place& place, const std::optional<Place>& known,
                                        int there);

/// What a person should know of an arrival: what was lost, what came extra, what is still out.
[[nodiscard]] std::vector<std::string> arrival_notes(const supply::ArrivalMove& arrived);

/// "L1, lot A" or "L1 without a lot number".
[[nodiscard]] std::string lot_name(const Lot& lot);

}  // namespace sparewell::desk
