#include "desktop/chart/chart_view.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include <fmt/format.h>
#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/chart/chart_menu.hpp"
#include "desktop/chart/paint.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {

ChartView::ChartView(wxWindow* parent, const std::string& name)
    : wxScrolled<wxWindow>{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                           wxVSCROLL | wxWANTS_CHARS | wxBORDER_THEME},
      name_{name} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(*this, name_);
  // The top may stay in place: nothing is moved on the screen, it is painted anew.
  EnableScrolling(false, false);
  SetScrollRate(0, 1);
  const auto again = [this](wxEvent& event) {
    event.Skip();
    make_anew();
  };
  const auto redraw = [this](wxEvent& event) {
    event.Skip();
    Refresh();
  };
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, again);
  Bind(wxEVT_SYS_COLOUR_CHANGED, redraw);
  Bind(wxEVT_DPI_CHANGED, again);
  Bind(wxEVT_SET_FOCUS, redraw);
  Bind(wxEVT_KILL_FOCUS, redraw);
  for (const auto& scrolled :
       {wxEVT_SCROLLWIN_TOP, wxEVT_SCROLLWIN_BOTTOM, wxEVT_SCROLLWIN_LINEUP,
        wxEVT_SCROLLWIN_LINEDOWN, wxEVT_SCROLLWIN_PAGEUP, wxEVT_SCROLLWIN_PAGEDOWN,
        wxEVT_SCROLLWIN_THUMBTRACK, wxEVT_SCROLLWIN_THUMBRELEASE}) {
    Bind(scrolled, redraw);
  }
  Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) { on_click(event.GetPosition()); });
  Bind(wxEVT_LEFT_DCLICK, [this](wxMouseEvent& event) { on_double_click(event.GetPosition()); });
  Bind(wxEVT_MOTION, [this](wxMouseEvent& event) { on_move(event.GetPosition()); });
  Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) { on_key(event); });
  Bind(wxEVT_CONTEXT_MENU, [this](wxContextMenuEvent& event) { show_menu(event.GetPosition()); });
}

void ChartView::show(picture::Maker make) {
  make_ = std::move(make);
  make_anew();
}

void ChartView::set_least_height(double lines) {
  least_lines_ = lines;
  make_anew();
}

void ChartView::grow_with_picture(double most_lines) {
  most_lines_ = most_lines;
  make_anew();
}

void ChartView::make_anew() {
  const auto size = GetClientSize();
  const double unit = FromDIP(100) / 100.0;
  if (make_) picture_ = make_(room_for(GetFont(), size.x, size.y, unit));
  const double line = GetCharHeight();
  const double wanted = std::min(picture_.height + 4 * unit, most_lines_ * line);
  SetMinSize({FromDIP(200), static_cast<int>(std::ceil(std::max(least_lines_ * line, wanted)))});
  SetVirtualSize(-1, static_cast<int>(std::ceil(picture_.height)));
  say_chosen();
  Refresh();
}

void ChartView::mark(const std::string& stop_id) {
  chosen_ = stop_id;
  keep_in_sight();
  say_chosen();
  Refresh();
}

void ChartView::say_chosen() {
  const auto stop = chosen_stop();
  set_accessible_name(
      *this, name_,
      stop ? fmt::format("{} {}", picture_.stops[*stop].words, picture_.words) : picture_.words);
}

Look ChartView::look() const {
  return {screen_palette(), GetFont(), FromDIP(100) / 100.0, chosen_, HasFocus()};
}

void ChartView::paint() {
  wxAutoBufferedPaintDC dc{this};
  const auto how = look();
  dc.SetBackground(wxBrush{how.palette.paper});
  dc.Clear();
  const std::unique_ptr<wxGraphicsContext> graphics{wxGraphicsContext::Create(dc)};
  if (!graphics) return;
  const auto size = GetClientSize();
  const double fixed = picture_.fixed_top;
  graphics->PushState();
  graphics->Clip(0, fixed, size.x, size.y - fixed);
  graphics->Translate(0, -GetViewStart().y);
  paint_picture(*graphics, picture_, how);
  graphics->PopState();
  if (fixed <= 0) return;
  graphics->Clip(0, 0, size.x, fixed);
  paint_picture(*graphics, picture_, how);
}

std::optional<std::size_t> ChartView::chosen_stop() const {
  const auto found = std::ranges::find(picture_.stops, chosen_, &picture::Stop::id);
  if (found == picture_.stops.end()) return std::nullopt;
  return static_cast<std::size_t>(found - picture_.stops.begin());
}

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
