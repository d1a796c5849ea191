/// What recorded sensitivities say about an order line: for the patients who are expected to need it.
#pragma once

#include <string>

#include "clinic/clinic.hpp"
#include "supply/proposal.hpp"

namespace sparewell::desk {

/// "To be asked before it is handed over: P-1, possible conflict for mineral oil; ..."; "" when nothing has to be asked or decided about any of the named patients. Conflicts that
/// nobody decided about are held back and never stand on a line.
[[nodiscard]] std::string verdicts_sentence(const supply::ProposalLine& line,
                                            const Clinic& clinic);

}  // namespace sparewell::desk
