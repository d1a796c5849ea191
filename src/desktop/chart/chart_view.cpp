#include "desktop/chart/chart_view.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include <fmt/format.h>
#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/chart/paint.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

/// Everything that gives the window its room, from within outwards.
void lay_out_around(wxWindow& window) {
  for (auto* around = window.GetParent(); around != nullptr; around = around->GetParent()) {
    if (auto* page = dynamic_cast<wxScrolledWindow*>(around)) page->FitInside();
    around->Layout();
    if (around->IsTopLevel()) return;
  }
}

}  // namespace

ChartView::ChartView(wxWindow* parent, const std::string& name)
    : wxScrolled<wxWindow>{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                           wxVSCROLL | wxWANTS_CHARS | wxBORDER_NONE},
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

bool ChartView::SetFont(const wxFont& font) {
  const bool changed = wxScrolled<wxWindow>::SetFont(font);
  if (changed) make_anew();
  return changed;
}

void ChartView::make_anew() {
  const auto size = GetClientSize();
  auto room = room_for(GetFont(), size.x, size.y, FromDIP(100) / 100.0);
  if (make_) picture_ = make_(room);
  SetVirtualSize(-1, static_cast<int>(std::ceil(picture_.height)));
  ask_for_height(std::move(room));
  say_chosen();
  Refresh();
}

void ChartView::ask_for_height(picture::Room room) {
  const double line = room.line_height;
  double wanted = least_lines_ * line;
  if (make_ && most_lines_ > 0) {
    // As high as it must be: many pictures fill what they are given. Before the page is laid out
    // there is no width.
    room.height = 0;
    if (room.width < FromDIP(200)) room.width = FromDIP(700);
    wanted = std::max(wanted, std::min(make_(room).height + 4 * room.unit, most_lines_ * line));
  }
  const wxSize least{FromDIP(200), static_cast<int>(std::ceil(wanted))};
  if (GetMinSize() == least) return;
  SetMinSize(least);
  // Not while the page is being laid out.
  if (IsShownOnScreen()) CallAfter([this] { lay_out_around(*this); });
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
  const auto size = GetClientSize();
  // While a page is being built it has hardly any size.
  if (size.x < 4 || size.y < 4) return;
  const std::unique_ptr<wxGraphicsContext> graphics{wxGraphicsContext::Create(dc)};
  if (!graphics) return;
  const double fixed = picture_.fixed_top;
  graphics->PushState();
  graphics->Clip(0, fixed, size.x, std::max(0.0, size.y - fixed));
  graphics->Translate(0, -GetViewStart().y);
  paint_picture(*graphics, picture_, how);
  graphics->PopState();
  graphics->PushState();
  graphics->Clip(0, 0, size.x, fixed);
  if (fixed > 0) paint_picture(*graphics, picture_, how);
  graphics->PopState();
  // Scrolled windows have no border of their own here.
  graphics->SetPen(how.palette.faint);
  graphics->SetBrush(*wxTRANSPARENT_BRUSH);
  graphics->DrawRoundedRectangle(0.5, 0.5, size.x - 1, size.y - 1, FromDIP(3));
}

std::optional<std::size_t> ChartView::chosen_stop() const {
  const auto found = std::ranges::find(picture_.stops, chosen_, &picture::Stop::id);
  if (found == picture_.stops.end()) return std::nullopt;
  return static_cast<std::size_t>(found - picture_.stops.begin());
}

}  // namespace sparewell::desktop
