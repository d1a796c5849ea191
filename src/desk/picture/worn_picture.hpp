/// What was worn, and when reactions began, as a picture.
#pragma once

#include <string>

#include "desk/picture/picture.hpp"
#include "desk/worn_drawing.hpp"

namespace sparewell::desk {

/// A strip for each item, and a numbered sign for each reaction with a line down through all of
/// them. Reactions are the first stops. The title names the patient by `reference`.
[[nodiscard]] picture::Maker worn_picture(WornChart chart, std::string reference);

}  // namespace sparewell::desk
