/// The result of a test of the forecasts as a picture.
#pragma once

#include <vector>

#include "desk/backtest_chart.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// A row for each entry, with its shares left and its errors right; a stop's id is the entry's.
[[nodiscard]] picture::Maker score_picture(std::vector<ScoreEntry> entries);

}  // namespace sparewell::desk
