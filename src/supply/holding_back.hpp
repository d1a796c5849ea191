/// Stock that may not be handed out: into quarantine, out of it again, or written off.
#pragma once

#include "supply/stock_move.hpp"

namespace sparewell::supply {

inline constexpr const char* usual_quarantine = "quarantine";

/// To `to`, or to "quarantine" when that is empty. Needs a reason.
[[nodiscard]] Decided<StockMove> quarantine(const StockView& view, const Pieces& wanted,
                                            const std::string& to, Date on,
                                            const std::string& reason);
/// From a quarantine to a store, with the reason why it may be handed out again.
[[nodiscard]] Decided<StockMove> release(const StockView& view, const Pieces& wanted,
                                         const std::string& to, Date on, const std::string& reason);

enum class WriteOff { expired, damaged, lost };

/// Pieces that are gone or thrown away; `note` says more and may be empty. Refuses "expired" for a
/// lot that is not.
[[nodiscard]] Decided<StockMove> write_off(const StockView& view, const Pieces& wanted,
                                           WriteOff why, Date on, const std::string& note);

}  // namespace sparewell::supply

namespace sparewell {
template <>
std::span<const std::string_view> words<supply::WriteOff>();
}  // namespace sparewell
