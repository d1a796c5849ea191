/// The small signs of pictures.
#pragma once

#include "desktop/chart/paint.hpp"

namespace sparewell::desktop {

void paint_sign(wxGraphicsContext& graphics, const picture::Sign& sign, const Look& look);

}  // namespace sparewell::desktop
