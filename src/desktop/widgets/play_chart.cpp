#include "desktop/widgets/play_chart.hpp"

#include <algorithm>
#include <memory>

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/play_paint.hpp"
#include "desktop/widgets/step_keys.hpp"

namespace sparewell::desktop {
namespace {

constexpr auto name = "Money in stock against pieces on hand, drawn";
constexpr auto shares_title = "Pieces on hand when asked for";

}  // namespace

PlayChart::PlayChart(wxWindow* parent)
    : wxWindow{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxWANTS_CHARS | wxBORDER_THEME} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(*this, name);
  SetMinSize({FromDIP(300), 13 * GetCharHeight()});
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out();
  });
  Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) {
    SetFocus();
    const auto at = event.GetPosition();
    if (const auto mark = drawing_.mark_at(at.x, at.y, FromDIP(12))) choose(*mark);
  });
  Bind(wxEVT_MOTION, [this](wxMouseEvent& event) { on_move(event.GetPosition()); });
  Bind(wxEVT_KEY_DOWN,
       [this](wxKeyEvent& event) { on_step_key(*this, event, [this](int by) { step(by); }); });
  const auto redraw = [this](wxFocusEvent& event) {
    event.Skip();
    Refresh();
  };
  Bind(wxEVT_SET_FOCUS, redraw);
  Bind(wxEVT_KILL_FOCUS, redraw);
}

void PlayChart::show(std::vector<desk::PlayCurve> curves, const std::string& title) {
  curves_ = std::move(curves);
  title_ = title;
  lay_out();
}

void PlayChart::mark(const std::string& id) {
  marked_ = id;
  if (const auto at = marked()) {
    set_accessible_name(*this, name, point_of(drawing_.marks[*at]).words);
  }
  Refresh();
}

const desk::PlayPoint& PlayChart::point_of(const desk::PlayMark& mark) const {
  return curves_[mark.curve].points[mark.point];
}

std::optional<std::size_t> PlayChart::marked() const {
  const auto found = std::ranges::find_if(
      drawing_.marks, [&](const desk::PlayMark& mark) { return point_of(mark).id == marked_; });
  if (found == drawing_.marks.end()) return std::nullopt;
  return static_cast<std::size_t>(found - drawing_.marks.begin());
}

desk::PlayMeasures PlayChart::measures() const {
  desk::PlayMeasures measures;
  measures.width = GetClientSize().x;
  measures.height = GetClientSize().y;
  measures.line_height = GetCharHeight();
  measures.left = GetTextExtent("100 %").x + FromDIP(12);
  measures.right = FromDIP(16);
  measures.top = 1.5 * GetCharHeight() + FromDIP(6);
  measures.bottom = 2 * GetCharHeight() + FromDIP(10);
  measures.tick_label_width = GetTextExtent("000,000").x;
  return measures;
}

void PlayChart::lay_out() {
  drawing_ = desk::draw_play(curves_, measures());
  Refresh();
}

void PlayChart::paint() {
  wxAutoBufferedPaintDC dc{this};
  const auto colours = strip_colours();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics || curves_.empty()) return;
  paint_axes(*graphics, colours);
  paint_curves(*graphics, colours);
  paint_points(*graphics, colours);
  paint_key(*graphics, colours);
}

void PlayChart::paint_axes(wxGraphicsContext& graphics, const StripColours& colours) const {
  const auto& across = drawing_.across;
  graphics.SetFont(GetFont().Bold(), colours.text);
  graphics.DrawText(shares_title, FromDIP(4), FromDIP(2));
  double width = 0;
  double height = 0;
  graphics.GetTextExtent(to_wx(title_), &width, &height);
  graphics.DrawText(to_wx(title_), across.right - width,
                    drawing_.bottom + FromDIP(6) + GetCharHeight());
  graphics.SetFont(GetFont(), colours.text);
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.faint}.Width(1)));
  for (const auto& tick : drawing_.stock_ticks) {
    graphics.StrokeLine(tick.x, drawing_.top, tick.x, drawing_.bottom);
    graphics.GetTextExtent(to_wx(tick.label), &width, &height);
    graphics.DrawText(to_wx(tick.label), tick.x - width / 2, drawing_.bottom + FromDIP(4));
  }
  for (const auto& tick : drawing_.fill_rate_ticks) {
    graphics.StrokeLine(across.left, tick.x, across.right, tick.x);
    graphics.GetTextExtent(to_wx(tick.label), &width, &height);
    graphics.DrawText(to_wx(tick.label), across.left - width - FromDIP(6), tick.x - height / 2);
  }
}

void PlayChart::paint_curves(wxGraphicsContext& graphics, const StripColours& colours) const {
  for (std::size_t i = 1; i < drawing_.marks.size(); ++i) {
    const auto& from = drawing_.marks[i - 1];
    const auto& to = drawing_.marks[i];
    if (from.curve == to.curve) {
      paint_play_line(graphics, colours, to.curve, {from.x, from.y}, {to.x, to.y});
    }
  }
}

void PlayChart::paint_points(wxGraphicsContext& graphics, const StripColours& colours) const {
  const double size = FromDIP(4);
  for (const auto& mark : drawing_.marks) {
    paint_play_mark(graphics, colours, mark.curve, mark.x, mark.y, size);
    const auto& label = point_of(mark).label;
    if (label.empty()) continue;
    paint_ring(graphics, colours.text, mark.x, mark.y, 2 * size);
    graphics.SetFont(GetFont().Bold(), colours.text);
    double width = 0;
    double height = 0;
    graphics.GetTextExtent(to_wx(label), &width, &height);
    // Left above the curve, where little lies, as long as there is room.
    const double beside = mark.x - width - 3 * size;
    const double left = beside > drawing_.across.left ? beside : mark.x + 3 * size;
    const double top = mark.y - height - 2 * size;
    graphics.SetBrush(wxBrush{colours.paper});
    graphics.SetPen(*wxTRANSPARENT_PEN);
    graphics.DrawRectangle(left - size, top, width + 2 * size, height);
    graphics.DrawText(to_wx(label), left, top);
  }
  if (const auto at = marked()) {
    const auto& mark = drawing_.marks[*at];
    paint_ring(graphics, HasFocus() ? colours.ahead : colours.worn, mark.x, mark.y, 3 * size);
  }
}

void PlayChart::paint_key(wxGraphicsContext& graphics, const StripColours& colours) const {
  // Curves rise to the right, so that the lower right is free.
  graphics.SetFont(GetFont(), colours.text);
  double widest = 0;
  double height = 0;
  for (const auto& curve : curves_) {
    double width = 0;
    graphics.GetTextExtent(to_wx(curve.name), &width, &height);
    widest = std::max(widest, width);
  }
  const double line = GetCharHeight() + FromDIP(4);
  const double sign = FromDIP(36);
  const double left = drawing_.across.right - widest - sign - FromDIP(16);
  double top = drawing_.bottom - line * static_cast<double>(curves_.size()) - FromDIP(8);
  graphics.SetBrush(wxBrush{colours.paper});
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.faint}.Width(1)));
  graphics.DrawRectangle(left - FromDIP(6), top - FromDIP(3), widest + sign + FromDIP(16),
                         line * static_cast<double>(curves_.size()) + FromDIP(6));
  for (std::size_t i = 0; i < curves_.size(); ++i) {
    const double middle = top + line / 2;
    if (curves_[i].points.size() > 1) {
      paint_play_line(graphics, colours, i, {left, middle}, {left + sign - FromDIP(6), middle});
    }
    paint_play_mark(graphics, colours, i, left + (sign - FromDIP(6)) / 2, middle, FromDIP(4));
    graphics.SetFont(GetFont(), colours.text);
    graphics.DrawText(to_wx(curves_[i].name), left + sign, middle - GetCharHeight() / 2.0);
    top += line;
  }
}

void PlayChart::choose(std::size_t at) {
  mark(point_of(drawing_.marks[at]).id);
  if (selected_call_) selected_call_(marked_);
}

void PlayChart::on_move(const wxPoint& at) {
  const auto mark = drawing_.mark_at(at.x, at.y, FromDIP(12));
  const auto words = mark ? to_wx(point_of(drawing_.marks[*mark]).words) : wxString{};
  if (GetToolTipText() != words) SetToolTip(words);
}

void PlayChart::step(int by) {
  if (drawing_.marks.empty()) return;
  const auto at = marked();
  if (!at) return choose(0);
  if (by < 0 && *at > 0) choose(*at - 1);
  if (by > 0 && *at + 1 < drawing_.marks.size()) choose(*at + 1);
}

}  // namespace sparewell::desktop
