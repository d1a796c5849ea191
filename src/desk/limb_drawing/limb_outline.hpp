/// A plain line drawing of a residual limb in its liner and socket.
#pragma once

#include <vector>

#include "desk/limb_drawing/limb_chain.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// Draws the limb of that side into the area, with the parts of the rows where they sit: dashed
/// where one is missing.
void add_outline(picture::Picture& picture, const picture::Room& room, const picture::Area& area,
                 const SideChain& chain);

/// Where in the same drawing a part sits.
[[nodiscard]] picture::Spot seat_of(const picture::Area& area, const SideChain& chain,
                                    ChainPlace place);

}  // namespace sparewell::desk
