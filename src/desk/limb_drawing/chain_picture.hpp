/// What holds a patient's limbs on, as one picture.
#pragma once

#include <string>
#include <vector>

#include "desk/limb_drawing/limb_chain.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// One panel a side, left on the left: the limb in outline, and in the order of the chain a row for
/// each part or missing function with its facts, life and verdicts. The stops are the rows, with
/// their ids. Its title names the patient by `reference`.
[[nodiscard]] picture::Maker chain_picture(std::vector<SideChain> chains, std::string reference,
                                           Date today);

}  // namespace sparewell::desk
