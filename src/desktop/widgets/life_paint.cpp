#include "desktop/widgets/life_paint.hpp"

#include <algorithm>
#include <memory>

#include <wx/brush.h>
#include <wx/graphics.h>
#include <wx/settings.h>
#include <wx/window.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

wxColour mixed(const wxColour& a, const wxColour& b, double share) {
  const auto part = [&](unsigned char x, unsigned char y) {
    return static_cast<unsigned char>(x * share + y * (1 - share));
  };
  return {part(a.Red(), b.Red()), part(a.Green(), b.Green()), part(a.Blue(), b.Blue())};
}

void pen(wxGraphicsContext& graphics, const wxColour& colour, double width) {
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colour}.Width(width)));
}

/// Two short strokes across the end say that the stretch goes on beyond the axis.
void paint_cut(wxGraphicsContext& graphics, const StripColours& colours, double x, double middle,
               double thickness) {
  pen(graphics, colours.paper, 2);
  for (const double shift : {-5.0, -9.0}) {
    graphics.StrokeLine(x + shift, middle + thickness / 2, x + shift + 3, middle - thickness / 2);
  }
}

}  // namespace

StripColours strip_colours() {
  StripColours colours;
  colours.paper = wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX);
  colours.text = wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOXTEXT);
  const auto accent = wxSystemSettings::GetColour(wxSYS_COLOUR_HIGHLIGHT);
  colours.faint = mixed(colours.text, colours.paper, 0.22);
  colours.worn = mixed(colours.text, colours.paper, 0.5);
  colours.ahead = mixed(accent, colours.text, 0.8);
  colours.marked = mixed(accent, colours.paper, 0.18);
  return colours;
}

std::unique_ptr<wxGraphicsContext> begin_drawing(wxAutoBufferedPaintDC& dc,
                                                 const wxColour& paper) {
  dc.SetBackground(wxBrush{paper});
  dc.Clear();
  return std::unique_ptr<wxGraphicsContext>{wxGraphicsContext::Create(dc)};
}

desk::StripMeasures strip_measures(const wxWindow& window, const std::vector<std::string>& labels) {
  desk::StripMeasures measures;
  measures.width = window.GetClientSize().x;
  measures.row_height = window.GetCharHeight() + window.FromDIP(8);
  measures.axis_height = window.GetCharHeight() + window.FromDIP(10);
  measures.tick_label_width = window.GetTextExtent("Mmm 0000").x;
  for (const auto& label : labels) {
    const auto width = window.GetTextExtent(to_wx(label)).x + window.FromDIP(24);
    measures.label_width = std::max(measures.label_width, static_cast<double>(width));
  }
  measures.label_width = std::min(measures.label_width, measures.width * 0.4);
  return measures;
}

void paint_axis_ticks(wxGraphicsContext& graphics, const wxWindow& window,
                      const std::vector<desk::Tick>& ticks, double axis_height, double bottom) {
  const auto colours = strip_colours();
  graphics.SetFont(window.GetFont(), colours.text);
  pen(graphics, colours.faint, 1);
  for (const auto& tick : ticks) {
    graphics.StrokeLine(tick.x, axis_height - window.FromDIP(4), tick.x, bottom);
    double width = 0;
    double height = 0;
    const auto label = to_wx(tick.label);
    graphics.GetTextExtent(label, &width, &height);
    graphics.DrawText(label, tick.x - width / 2, window.FromDIP(3));
  }
}

void paint_worn(wxGraphicsContext& graphics, const StripColours& colours, const desk::Stretch& worn,
                double middle, double thickness) {
  graphics.SetPen(*wxTRANSPARENT_PEN);
  graphics.SetBrush(wxBrush{colours.worn});
  graphics.DrawRectangle(worn.from, middle - thickness / 2, std::max(1.0, worn.to - worn.from),
                         thickness);
  if (worn.cut_from) paint_cut(graphics, colours, worn.from + 14, middle, thickness);
}

void paint_ahead(wxGraphicsContext& graphics, const StripColours& colours,
                 const desk::Stretch& ahead, double middle, double thickness) {
  const double top = middle - thickness / 2;
  const double width = std::max(2.0, ahead.to - ahead.from);
  graphics.PushState();
  graphics.Clip(ahead.from, top, width, thickness);
  pen(graphics, colours.ahead, 1);
  for (double x = ahead.from - thickness; x < ahead.to + thickness; x += 5) {
    graphics.StrokeLine(x, top + thickness, x + thickness, top);
  }
  graphics.PopState();
  graphics.SetBrush(*wxTRANSPARENT_BRUSH);
  pen(graphics, colours.ahead, 1.5);
  graphics.DrawRectangle(ahead.from, top, width, thickness);
  if (ahead.cut_to) paint_cut(graphics, colours, ahead.to, middle, thickness + 2);
}

void paint_median(wxGraphicsContext& graphics, const StripColours& colours, double x, double middle,
                  double size) {
  auto path = graphics.CreatePath();
  path.MoveToPoint(x, middle - size);
  path.AddLineToPoint(x + size * 0.8, middle);
  path.AddLineToPoint(x, middle + size);
  path.AddLineToPoint(x - size * 0.8, middle);
  path.CloseSubpath();
  graphics.SetBrush(wxBrush{colours.text});
  pen(graphics, colours.paper, 1);
  graphics.DrawPath(path);
}

void paint_order_by(wxGraphicsContext& graphics, const StripColours& colours, double x,
                    double middle, double size, bool passed) {
  auto flag = graphics.CreatePath();
  flag.MoveToPoint(x, middle - size);
  flag.AddLineToPoint(x + size, middle - size * 0.5);
  flag.AddLineToPoint(x, middle);
  flag.CloseSubpath();
  pen(graphics, colours.text, 1.5);
  graphics.StrokeLine(x, middle - size, x, middle + size);
  graphics.SetBrush(passed ? wxBrush{colours.text} : wxBrush{colours.paper});
  graphics.DrawPath(flag);
}

}  // namespace sparewell::desktop
