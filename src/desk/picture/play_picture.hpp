/// Money in stock against the share of pieces on hand when asked for, as a picture.
#pragma once

#include <string>
#include <vector>

#include "desk/picture/picture.hpp"
#include "desk/play_chart.hpp"

namespace sparewell::desk {

/// A curve for each way of ordering, told apart by signs and lines; a stop's id is the point's.
/// `money_title` stands at the axis of money.
[[nodiscard]] picture::Maker play_picture(std::vector<PlayCurve> curves, std::string money_title);

}  // namespace sparewell::desk
