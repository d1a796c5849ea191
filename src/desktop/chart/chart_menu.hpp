/// What can be done with a picture besides looking at it.
#pragma once

#include <wx/event.h>

#include "desk/picture/picture.hpp"

namespace sparewell::desktop {

class ChartView;

/// Lets it be copied, read as text and printed; `at` lies within the view.
void show_chart_menu(ChartView& view, const wxPoint& at, const picture::Maker& make);

/// Ctrl+C copies the picture. Whether the key was one for copying.
[[nodiscard]] bool copy_by_key(const wxKeyEvent& event, ChartView& view);

}  // namespace sparewell::desktop
