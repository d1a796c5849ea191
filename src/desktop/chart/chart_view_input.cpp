#include <algorithm>
#include <cmath>

#include "desktop/chart/chart_menu.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {

std::optional<std::size_t> ChartView::stop_at(const wxPoint& at) const {
  const double y = at.y < picture_.fixed_top ? at.y : at.y + GetViewStart().y;
  // The last is painted over the others.
  for (std::size_t i = picture_.stops.size(); i > 0; --i) {
    if (picture_.stops[i - 1].area.holds(at.x, y)) return i - 1;
  }
  return std::nullopt;
}

void ChartView::choose(std::size_t stop) {
  // A copy: the call may show another picture.
  const auto id = picture_.stops[stop].id;
  mark(id);
  if (selected_call_) selected_call_(id);
}

void ChartView::keep_in_sight() {
  const auto stop = chosen_stop();
  if (!stop) return;
  const auto& area = picture_.stops[*stop].area;
  const double fixed = picture_.fixed_top;
  if (area.top < fixed) return;
  const double seen = GetViewStart().y;
  // With what stands above the first one.
  if (*stop == 0) return Scroll(-1, 0);
  if (area.top < seen + fixed) Scroll(-1, static_cast<int>(area.top - fixed));
  if (area.bottom > seen + GetClientSize().y) {
    Scroll(-1, static_cast<int>(std::ceil(area.bottom - GetClientSize().y)));
  }
}

void ChartView::on_click(const wxPoint& at) {
  SetFocus();
  if (const auto stop = stop_at(at)) choose(*stop);
}

void ChartView::on_double_click(const wxPoint& at) {
  const auto stop = stop_at(at);
  if (!stop) return;
  const auto id = picture_.stops[*stop].id;
  mark(id);
  if (chosen_call_) chosen_call_(id);
}

void ChartView::on_move(const wxPoint& at) {
  const auto stop = stop_at(at);
  const auto words = stop ? to_wx(picture_.stops[*stop].words) : wxString{};
  if (GetToolTipText() != words) SetToolTip(words);
}

void ChartView::on_key(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (key == WXK_TAB) {
    Navigate(event.ShiftDown() ? wxNavigationKeyEvent::IsBackward
                               : wxNavigationKeyEvent::IsForward);
    return;
  }
  if (copy_by_key(event, *this)) return;
  const auto at = chosen_stop();
  if (event.HasAnyModifiers() || picture_.stops.empty()) return event.Skip();
  const std::size_t last = picture_.stops.size() - 1;
  if (key == WXK_DOWN || key == WXK_RIGHT) return choose(at ? std::min(*at + 1, last) : 0);
  if (key == WXK_UP || key == WXK_LEFT) return choose(at && *at > 0 ? *at - 1 : 0);
  if (key == WXK_HOME) return choose(0);
  if (key == WXK_END) return choose(last);
  if ((key == WXK_RETURN || key == WXK_NUMPAD_ENTER) && at && chosen_call_) {
    const auto id = chosen_;
    return chosen_call_(id);
  }
  event.Skip();
}

void ChartView::show_menu(wxPoint at) {
  // From the keyboard there is no place: beside what is chosen.
  if (at == wxDefaultPosition) {
    const auto stop = chosen_stop();
    at = stop ? wxPoint{static_cast<int>(picture_.stops[*stop].area.left) + FromDIP(8),
                        static_cast<int>(picture_.stops[*stop].area.bottom) - GetViewStart().y}
              : wxPoint{FromDIP(8), FromDIP(8)};
  } else {
    at = ScreenToClient(at);
  }
  show_chart_menu(*this, at, make_);
}

}  // namespace sparewell::desktop
