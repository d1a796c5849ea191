/// The pictures of the single pages of the help.
#pragma once

#include "clinic/date.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// The day of all examples, a Wednesday.
inline const Date example_day = make_date(2026, 11, 25);

/// The stock of an item that 30 people wear, over half a year.
[[nodiscard]] picture::Maker ordering_example();
/// From the scan of a delivery to where its pieces go.
[[nodiscard]] picture::Maker receiving_example();
/// A pin suspension of which one part is missing.
[[nodiscard]] picture::Maker patients_example();
/// What was worn before two reactions.
[[nodiscard]] picture::Maker sensitivities_example();
/// Three parts beside the days of a trip: one lasts, one may not, of one nothing is known.
[[nodiscard]] picture::Maker travel_example();
/// What was handed out beside what was billed.
[[nodiscard]] picture::Maker billing_example();
/// From a folder of files into the clinic file.
[[nodiscard]] picture::Maker import_example();
/// The places of the window.
[[nodiscard]] picture::Maker window_example();

}  // namespace sparewell::desk
