/// Moves between branches in words: what goes where, and why.
#pragma once

#include <string>

#include "desk/restock.hpp"

namespace sparewell::desk {

/// "2 of L1 from main store to North (lot A, use by 1 Dec 2027)".
[[nodiscard]] std::string move_words(const supply::RestockMove& move);
/// "lot A, use by 1 Dec 2027 and lot B".
[[nodiscard]] std::string lots_words(const supply::RestockMove& move);
/// Why the pieces should go: what is there and expected to be needed there, by whom, the chance of
/// running out at both places before and after, and what is gained. Patients by reference only.
[[nodiscard]] std::string why(const supply::RestockMove& move, const RestockPlan& plan);
/// How many moves there are, and for how long they are meant.
[[nodiscard]] std::string summary_words(const RestockPlan& plan);
/// Why there is nothing to move: all is in one place, or it lies well as it is.
[[nodiscard]] std::string nothing_to_move_words(const RestockPlan& plan);

}  // namespace sparewell::desk
