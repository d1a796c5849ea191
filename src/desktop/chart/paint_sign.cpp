#include "desktop/chart/paint_sign.hpp"

#include <initializer_list>

#include <wx/brush.h>
#include <wx/graphics.h>

namespace sparewell::desktop {
namespace {

using picture::SignForm;

wxGraphicsPath lines(wxGraphicsContext& graphics, const picture::Sign& sign,
                     std::initializer_list<wxPoint2DDouble> corners) {
  auto path = graphics.CreatePath();
  bool first = true;
  for (const auto& corner : corners) {
    const wxPoint2DDouble at{sign.at.x + corner.m_x * sign.size,
                             sign.at.y + corner.m_y * sign.size};
    if (first) {
      path.MoveToPoint(at);
    } else {
      path.AddLineToPoint(at);
    }
    first = false;
  }
  return path;
}

wxGraphicsPath closed(wxGraphicsPath path) {
  path.CloseSubpath();
  return path;
}

void paint_flag(wxGraphicsContext& graphics, const picture::Sign& sign) {
  graphics.StrokePath(lines(graphics, sign, {{0, -1}, {0, 1}}));
  graphics.DrawPath(closed(lines(graphics, sign, {{0, -1}, {1, -0.5}, {0, 0}})));
}

void paint_question(wxGraphicsContext& graphics, const picture::Sign& sign, const Look& look) {
  graphics.SetFont(look.font.Bold(), look.palette.of(sign.ink));
  double width = 0;
  double height = 0;
  graphics.GetTextExtent("?", &width, &height);
  graphics.DrawText("?", sign.at.x - width / 2, sign.at.y - height / 2);
}

}  // namespace

void paint_sign(wxGraphicsContext& graphics, const picture::Sign& sign, const Look& look) {
  const auto& ink = look.palette.of(sign.ink);
  const bool of_lines = sign.form == SignForm::flag || sign.form == SignForm::cross ||
                        sign.form == SignForm::check || sign.form == SignForm::ring;
  // A seam of the ground keeps filled signs apart that lie over each other.
  const bool seam = sign.filled && !of_lines;
  const double width = (sign.form == SignForm::flag || !of_lines ? 1.5 : 2) * look.unit;
  graphics.SetPen(graphics.CreatePen(
      wxGraphicsPenInfo{seam ? look.palette.paper : ink}.Width(seam ? look.unit : width)));
  graphics.SetBrush(wxBrush{sign.filled ? ink : look.palette.paper});
  const double size = sign.size;
  switch (sign.form) {
    case SignForm::disc:
      graphics.DrawEllipse(sign.at.x - size, sign.at.y - size, 2 * size, 2 * size);
      break;
    case SignForm::ring:
      graphics.SetBrush(*wxTRANSPARENT_BRUSH);
      graphics.DrawEllipse(sign.at.x - size, sign.at.y - size, 2 * size, 2 * size);
      break;
    case SignForm::diamond:
      graphics.DrawPath(closed(lines(graphics, sign, {{0, -1}, {0.8, 0}, {0, 1}, {-0.8, 0}})));
      break;
    case SignForm::square:
      graphics.DrawRectangle(sign.at.x - size, sign.at.y - size, 2 * size, 2 * size);
      break;
    case SignForm::triangle:
      graphics.DrawPath(closed(lines(graphics, sign, {{0, -1}, {1, 0.8}, {-1, 0.8}})));
      break;
    case SignForm::flag:
      paint_flag(graphics, sign);
      break;
    case SignForm::cross:
      graphics.StrokePath(lines(graphics, sign, {{-0.8, -0.8}, {0.8, 0.8}}));
      graphics.StrokePath(lines(graphics, sign, {{-0.8, 0.8}, {0.8, -0.8}}));
      break;
    case SignForm::check:
      graphics.StrokePath(lines(graphics, sign, {{-0.9, 0}, {-0.3, 0.7}, {0.9, -0.8}}));
      break;
    case SignForm::question:
      paint_question(graphics, sign, look);
      break;
  }
}

}  // namespace sparewell::desktop
