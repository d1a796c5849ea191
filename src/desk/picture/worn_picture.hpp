/// What was worn, and when reactions began, as a picture.
#pragma once

#include "desk/picture/picture.hpp"
#include "desk/worn_drawing.hpp"

namespace sparewell::desk {

/// A strip for each item, and a numbered sign for each reaction with a line down through all of
/// them. Reactions are the first stops.
[[nodiscard]] picture::Maker worn_picture(WornChart chart);

}  // namespace sparewell::desk
