#include "desktop/widgets/play_paint.hpp"

#include <array>

#include <wx/brush.h>
#include <wx/graphics.h>

namespace sparewell::desktop {
namespace {

struct Stroke {
  double width;
  wxPenStyle style;
};
constexpr std::array<Stroke, 4> strokes{{{2, wxPENSTYLE_SOLID},
                                         {2, wxPENSTYLE_SHORT_DASH},
                                         {1, wxPENSTYLE_SOLID},
                                         {1, wxPENSTYLE_DOT}}};

void paint_polygon(wxGraphicsContext& graphics, std::initializer_list<wxPoint2DDouble> corners) {
  auto path = graphics.CreatePath();
  bool first = true;
  for (const auto& corner : corners) {
    if (first) {
      path.MoveToPoint(corner);
    } else {
      path.AddLineToPoint(corner);
    }
    first = false;
  }
  path.CloseSubpath();
  graphics.DrawPath(path);
}

wxColour colour_of(const StripColours& colours, std::size_t curve) {
  return curve < 2 ? colours.ahead : colours.text;
}

}  // namespace

void paint_play_mark(wxGraphicsContext& graphics, const StripColours& colours, std::size_t curve,
                     double x, double y, double size) {
  graphics.SetBrush(wxBrush{colour_of(colours, curve)});
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.paper}.Width(1)));
  switch (curve) {
    case 0:
      graphics.DrawEllipse(x - size, y - size, 2 * size, 2 * size);
      break;
    case 1:
      paint_polygon(
          graphics,
          {{x, y - 1.4 * size}, {x + 1.4 * size, y}, {x, y + 1.4 * size}, {x - 1.4 * size, y}});
      break;
    case 2:
      graphics.DrawRectangle(x - size, y - size, 2 * size, 2 * size);
      break;
    default:
      paint_polygon(graphics,
                    {{x, y - 1.4 * size}, {x + 1.4 * size, y + size}, {x - 1.4 * size, y + size}});
      break;
  }
}

void paint_play_line(wxGraphicsContext& graphics, const StripColours& colours, std::size_t curve,
                     const wxPoint2DDouble& from, const wxPoint2DDouble& to) {
  const auto& [width, style] = strokes.at(curve);
  graphics.SetPen(
      graphics.CreatePen(wxGraphicsPenInfo{colour_of(colours, curve)}.Width(width).Style(style)));
  graphics.StrokeLine(from.m_x, from.m_y, to.m_x, to.m_y);
}

void paint_ring(wxGraphicsContext& graphics, const wxColour& colour, double x, double y,
                double radius) {
  graphics.SetBrush(*wxTRANSPARENT_BRUSH);
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colour}.Width(2)));
  graphics.DrawEllipse(x - radius, y - radius, 2 * radius, 2 * radius);
}

}  // namespace sparewell::desktop
