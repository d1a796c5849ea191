#include "desktop/widgets/limb_chart.hpp"

#include <memory>

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/life_paint.hpp"

namespace sparewell::desktop {
namespace {

constexpr auto name = "Circumference over time, drawn";
constexpr auto nothing = "Nothing is measured yet. Record a measurement with Ctrl+U.";

constexpr auto key =
    "\u25CF measured    \u25CB between heights    \u2501 trend    \u2508 80 % span    \u254C "
    "size "
    "worn";

wxGraphicsPath path_of(wxGraphicsContext& graphics, const std::vector<desk::LimbPoint>& points) {
  auto path = graphics.CreatePath();
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i == 0) {
      path.MoveToPoint(points[i].x, points[i].y);
    } else {
      path.AddLineToPoint(points[i].x, points[i].y);
    }
  }
  return path;
}

wxColour faded(const wxColour& colour, unsigned char opacity) {
  return {colour.Red(), colour.Green(), colour.Blue(), opacity};
}

}  // namespace

LimbChart::LimbChart(wxWindow* parent)
    : wxWindow{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxBORDER_THEME} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(*this, name);
  SetMinSize({FromDIP(640), 15 * GetCharHeight()});
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out();
  });
  Bind(wxEVT_MOTION, [this](wxMouseEvent& event) {
    if (!curve_) return;
    const auto at = event.GetPosition();
    const auto dot = drawing_.dot_at(at.x, at.y, FromDIP(12));
    const auto words = dot ? to_wx(curve_->dot_words[*dot]) : wxString{};
    if (GetToolTipText() != words) SetToolTip(words);
  });
}

void LimbChart::show(std::optional<desk::LimbCurve> curve) {
  curve_ = std::move(curve);
  set_accessible_name(*this, name, curve_ ? curve_->words : std::string{nothing});
  lay_out();
}

desk::LimbMeasures LimbChart::measures() const {
  desk::LimbMeasures measures;
  measures.width = GetClientSize().x;
  measures.height = GetClientSize().y;
  measures.line_height = GetCharHeight();
  measures.left = GetTextExtent("00.0 cm").x + FromDIP(12);
  measures.right = FromDIP(16);
  measures.top = 1.6 * GetCharHeight() + FromDIP(6);
  measures.bottom = GetCharHeight() + FromDIP(10);
  measures.tick_label_width = GetTextExtent("Mmm 0000").x;
  return measures;
}

void LimbChart::lay_out() {
  if (curve_) drawing_ = desk::draw_limb(*curve_, measures());
  Refresh();
}

void LimbChart::paint() {
  wxAutoBufferedPaintDC dc{this};
  const auto colours = strip_colours();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics) return;
  if (!curve_) {
    graphics->SetFont(GetFont(), colours.text);
    graphics->DrawText(nothing, FromDIP(12), FromDIP(12));
    return;
  }
  paint_sizes(*graphics, colours);
  paint_axes(*graphics, colours);
  paint_trend(*graphics, colours);
  paint_dots(*graphics, colours);
  paint_key(*graphics, colours);
}

void LimbChart::paint_sizes(wxGraphicsContext& graphics, const StripColours& colours) const {
  const auto& across = drawing_.across;
  graphics.SetFont(GetFont().Bold(), colours.text);
  for (const auto& size : drawing_.sizes) {
    graphics.SetPen(*wxTRANSPARENT_PEN);
    graphics.SetBrush(wxBrush{faded(colours.text, 16)});
    graphics.DrawRectangle(across.left, size.top, across.right - across.left,
                           size.bottom - size.top);
    graphics.SetPen(
        graphics.CreatePen(wxGraphicsPenInfo{colours.text}.Width(1).Style(wxPENSTYLE_SHORT_DASH)));
    if (size.has_top) graphics.StrokeLine(across.left, size.top, across.right, size.top);
    if (size.has_bottom) graphics.StrokeLine(across.left, size.bottom, across.right, size.bottom);
    double width = 0;
    double height = 0;
    const auto label = to_wx("worn: " + size.label);
    graphics.GetTextExtent(label, &width, &height);
    graphics.DrawText(label, across.left + FromDIP(6), size.label_bottom - height - FromDIP(3));
  }
}

void LimbChart::paint_axes(wxGraphicsContext& graphics, const StripColours& colours) const {
  const auto& across = drawing_.across;
  double width = 0;
  double height = 0;
  graphics.SetFont(GetFont(), colours.text);
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.faint}.Width(1)));
  for (const auto& tick : drawing_.month_ticks) {
    graphics.StrokeLine(tick.x, drawing_.top, tick.x, drawing_.bottom);
    graphics.GetTextExtent(to_wx(tick.label), &width, &height);
    if (tick.x + width / 2 > across.right + FromDIP(14)) continue;
    graphics.DrawText(to_wx(tick.label), tick.x - width / 2, drawing_.bottom + FromDIP(4));
  }
  for (const auto& tick : drawing_.cm_ticks) {
    graphics.StrokeLine(across.left, tick.x, across.right, tick.x);
    graphics.GetTextExtent(to_wx(tick.label), &width, &height);
    graphics.DrawText(to_wx(tick.label), across.left - width - FromDIP(6), tick.x - height / 2);
  }
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.text}.Width(1)));
  graphics.StrokeLine(drawing_.today, drawing_.top, drawing_.today, drawing_.bottom);
  graphics.GetTextExtent("today", &width, &height);
  graphics.DrawText("today", drawing_.today - width - FromDIP(4), drawing_.top + FromDIP(2));
}

void LimbChart::paint_trend(wxGraphicsContext& graphics, const StripColours& colours) const {
  if (drawing_.middle.empty()) return;
  auto band = path_of(graphics, drawing_.high);
  for (auto at = drawing_.low.rbegin(); at != drawing_.low.rend(); ++at) {
    band.AddLineToPoint(at->x, at->y);
  }
  band.CloseSubpath();
  graphics.SetPen(*wxTRANSPARENT_PEN);
  graphics.SetBrush(wxBrush{faded(colours.ahead, 48)});
  graphics.FillPath(band);
  graphics.SetPen(
      graphics.CreatePen(wxGraphicsPenInfo{colours.ahead}.Width(1).Style(wxPENSTYLE_DOT)));
  graphics.StrokePath(path_of(graphics, drawing_.high));
  graphics.StrokePath(path_of(graphics, drawing_.low));
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.ahead}.Width(2)));
  graphics.StrokePath(path_of(graphics, drawing_.middle));
}

void LimbChart::paint_dots(wxGraphicsContext& graphics, const StripColours& colours) const {
  const double size = FromDIP(4);
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.text}.Width(1.5)));
  for (std::size_t i = 0; i < drawing_.dots.size(); ++i) {
    const auto& dot = drawing_.dots[i];
    // Between two heights, and not measured at this one: hollow.
    graphics.SetBrush(wxBrush{curve_->dots[i].interpolated ? colours.paper : colours.text});
    graphics.DrawEllipse(dot.x - size, dot.y - size, 2 * size, 2 * size);
  }
}

void LimbChart::paint_key(wxGraphicsContext& graphics, const StripColours& colours) const {
  graphics.SetFont(GetFont(), colours.text);
  graphics.DrawText(to_wx(key), drawing_.across.left, FromDIP(4));
}

}  // namespace sparewell::desktop
