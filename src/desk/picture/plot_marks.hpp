/// The grid behind curves, as pictures.
#pragma once

#include <vector>

#include "desk/picture/picture.hpp"
#include "desk/time_axis.hpp"

namespace sparewell::picture {

/// Lines and labels of the ticks across, below the plot, and of those upwards, left of it; the x of
/// the latter is a height from the top. A label that would reach out of the room is moved in, or
/// left out where it would touch the one before it.
void add_grid(Picture& picture, const Room& room, const Area& plot,
              const std::vector<desk::Tick>& across, const std::vector<desk::Tick>& upwards);

}  // namespace sparewell::picture
