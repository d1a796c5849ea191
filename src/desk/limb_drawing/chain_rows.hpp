/// The rows beside the outline of a limb.
#pragma once

#include <vector>

#include "desk/limb_drawing/limb_chain.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// How the rows of one panel are laid out.
struct RowPlan {
  double left = 0;
  double right = 0;
  double top = 0;            ///< below the heading and the axis
  std::vector<double> tops;  ///< of each row, and the end of the last
  double strip_left = 0;
  double strip_right = 0;
  bool strip_beside = false;  ///< the strip stands beside the words, not below them
};

/// `top` is where the axis begins. Further units of a function take less room.
[[nodiscard]] RowPlan plan_rows(const picture::Room& room, double left, double right, double top,
                                const SideChain& chain);
/// All rows of a side, with their strips over one axis of days, and a stop for each.
void add_rows(picture::Picture& picture, const picture::Room& room, const RowPlan& plan,
              const SideChain& chain, Date today);

}  // namespace sparewell::desk
