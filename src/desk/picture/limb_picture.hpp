/// The circumference of a limb over time as a picture.
#pragma once

#include <optional>
#include <string>

#include "desk/limb_chart.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// What was measured, the trend with its span, and the sizes worn; words alone where nothing is
/// measured. Stops are the measurements, their ids the days. The title names the patient by
/// `reference`.
[[nodiscard]] picture::Maker limb_picture(std::optional<LimbCurve> curve, std::string reference);

}  // namespace sparewell::desk
