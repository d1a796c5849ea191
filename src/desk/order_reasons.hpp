/// Puts the numbers behind an order line into words.
#pragma once

#include <string>

#include "clinic/clinic.hpp"
#include "supply/proposal.hpp"

namespace sparewell::desk {

/// Why the line is proposed: who is expected to need it and when, position, target, and the chance
/// of running out. A few sentences; patients by reference only. `clinic` is asked for draft orders
/// of the item, which do not count as on order.
[[nodiscard]] std::string why(const supply::ProposalLine& line, const Clinic& clinic);

/// The same in one short clause for a table row, which shows the chance of running out beside it.
[[nodiscard]] std::string short_reason(const supply::ProposalLine& line);

/// Why a line is held back, as a sentence.
[[nodiscard]] std::string held_words(supply::HeldFor reason);

}  // namespace sparewell::desk
