#include "desktop/widgets/score_paint.hpp"

#include <algorithm>

#include <wx/brush.h>
#include <wx/graphics.h>

namespace sparewell::desktop {
namespace {

void pen(wxGraphicsContext& graphics, const wxColour& colour, double width,
         wxPenStyle style = wxPENSTYLE_SOLID) {
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colour}.Width(width).Style(style)));
}

void paint_triangle(wxGraphicsContext& graphics, double x, double y, double size) {
  auto path = graphics.CreatePath();
  path.MoveToPoint(x, y - size);
  path.AddLineToPoint(x + size, y + size);
  path.AddLineToPoint(x - size, y + size);
  path.CloseSubpath();
  graphics.DrawPath(path);
}

void paint_hatching(wxGraphicsContext& graphics, double from, double to, double top,
                    double height) {
  graphics.PushState();
  graphics.Clip(from, top, to - from, height);
  for (double x = from - height; x < to + height; x += 5) {
    graphics.StrokeLine(x, top + height, x + height, top);
  }
  graphics.PopState();
}

}  // namespace

void paint_mark(wxGraphicsContext& graphics, const StripColours& colours, std::size_t span,
                double x, double y, double size) {
  graphics.SetBrush(wxBrush{colours.text});
  pen(graphics, colours.paper, 1);
  if (span == 0) graphics.DrawEllipse(x - size, y - size, 2 * size, 2 * size);
  if (span == 1) graphics.DrawRectangle(x - size, y - size, 2 * size, 2 * size);
  if (span == 2) paint_triangle(graphics, x, y, size);
}

void paint_interval(wxGraphicsContext& graphics, const StripColours& colours, double low,
                    double high, double y, double size) {
  pen(graphics, colours.ahead, 2);
  graphics.StrokeLine(low, y, high, y);
  graphics.StrokeLine(low, y - size, low, y + size);
  graphics.StrokeLine(high, y - size, high, y + size);
}

void paint_nominal(wxGraphicsContext& graphics, const StripColours& colours, double x, double top,
                   double bottom) {
  pen(graphics, colours.worn, 1, wxPENSTYLE_SHORT_DASH);
  graphics.StrokeLine(x, top, x, bottom);
}

void paint_error(wxGraphicsContext& graphics, const StripColours& colours, std::size_t forecaster,
                 double from, double to, double top, double height) {
  const double width = std::max(1.0, to - from);
  pen(graphics, forecaster == 0 ? colours.ahead : colours.worn, 1);
  if (forecaster == 1) paint_hatching(graphics, from, from + width, top, height);
  graphics.SetBrush(forecaster == 0 ? wxBrush{colours.ahead} : *wxTRANSPARENT_BRUSH);
  graphics.DrawRectangle(from, top, width, height);
}

}  // namespace sparewell::desktop
