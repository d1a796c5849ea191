/// What the checks say of a part in a few words.
#pragma once

#include <vector>

#include "desk/limb_drawing/limb_chain.hpp"

namespace sparewell::desk {

/// Of the parts of `item` on that side; `known` tells whether the catalogue has the item. The
/// gravest first. A patient without a recorded sensitivity is said to have none recorded.
[[nodiscard]] std::vector<ChainVerdict> chain_verdicts(const std::vector<PatientFinding>& findings,
                                                       Side side, const ItemCode& item, bool known);

/// The sentences of the same findings.
[[nodiscard]] std::string finding_sentences(const std::vector<PatientFinding>& findings, Side side,
                                            const ItemCode& item);

}  // namespace sparewell::desk
