#include "desktop/widgets/scroll_to_focus.hpp"

#include <algorithm>

namespace sparewell::desktop {
namespace {

/// How far the page has to move for the area to be in sight; its top when it does not fit.
int shift_to(const wxRect& area, int room) {
  if (area.GetTop() < 0) return area.GetTop();
  const int below = area.GetBottom() + 1 - room;
  return std::clamp(below, 0, area.GetTop());
}

}  // namespace

void scroll_to_focus(wxScrolledWindow& page) {
  page.Bind(wxEVT_CHILD_FOCUS, [&page](wxChildFocusEvent& event) {
    event.Skip();
    const auto* focused = event.GetWindow();
    const wxRect area{page.ScreenToClient(focused->GetScreenPosition()), focused->GetSize()};
    int across = 0;
    int step = 0;
    page.GetScrollPixelsPerUnit(&across, &step);
    const int shift = shift_to(area, page.GetClientSize().y);
    if (step <= 0 || shift == 0) return;
    // A whole step more where the shift does not come out even.
    const int steps = shift > 0 ? (shift + step - 1) / step : (shift - step + 1) / step;
    page.Scroll(-1, std::max(0, page.GetViewStart().y + steps));
  });
}

}  // namespace sparewell::desktop
