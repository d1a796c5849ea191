#include "desktop/chart/paint.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include <wx/bitmap.h>
#include <wx/brush.h>
#include <wx/dcmemory.h>
#include <wx/graphics.h>

#include "desk/picture/pattern.hpp"
#include "desktop/chart/paint_sign.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

using picture::Fill;
using picture::Line;

wxGraphicsPen pen_of(wxGraphicsContext& graphics, const wxColour& colour, Line line, double width) {
  auto style = wxPENSTYLE_SOLID;
  if (line == Line::dashed) style = wxPENSTYLE_SHORT_DASH;
  if (line == Line::dotted) style = wxPENSTYLE_DOT;
  return graphics.CreatePen(wxGraphicsPenInfo{colour}.Width(width).Style(style));
}

wxGraphicsPath path_of(wxGraphicsContext& graphics, const std::vector<picture::Spot>& spots) {
  auto path = graphics.CreatePath();
  for (std::size_t i = 0; i < spots.size(); ++i) {
    if (i == 0) path.MoveToPoint(spots[i].x, spots[i].y);
    if (i > 0) path.AddLineToPoint(spots[i].x, spots[i].y);
  }
  return path;
}

class Painter {
 public:
  Painter(wxGraphicsContext& graphics, const Look& look) : graphics_{graphics}, look_{look} {}

  void operator()(const picture::Stroke& stroke) const {
    if (stroke.line == Line::none || stroke.through.size() < 2) return;
    graphics_.SetPen(
        pen_of(graphics_, look_.palette.of(stroke.ink), stroke.line, stroke.width * look_.unit));
    graphics_.StrokePath(path_of(graphics_, stroke.through));
  }

  void operator()(const picture::Box& box) const {
    const auto& [left, top, right, bottom] = box.area;
    auto path = graphics_.CreatePath();
    if (box.radius > 0) {
      path.AddRoundedRectangle(left, top, right - left, bottom - top, box.radius);
    } else {
      path.AddRectangle(left, top, right - left, bottom - top);
    }
    fill(path, picture::corners(box.area), box.fill, box.ink);
    outline(path, box.border, box.ink, box.border_width);
  }

  void operator()(const picture::Shape& shape) const {
    auto path = path_of(graphics_, shape.outline);
    path.CloseSubpath();
    fill(path, shape.outline, shape.fill, shape.ink);
    outline(path, shape.border, shape.ink, 1);
  }

  void operator()(const picture::Sign& sign) const { paint_sign(graphics_, sign, look_); }

  void operator()(const picture::Words& words) const {
    graphics_.SetFont(words.strong ? look_.font.Bold() : look_.font, look_.palette.of(words.ink));
    double width = 0;
    double height = 0;
    auto text = to_wx(words.text);
    graphics_.GetTextExtent(text, &width, &height);
    while (words.most_width > 0 && width > words.most_width && text.length() > 2) {
      // As many letters less as the width asks for, and at least one.
      const auto share = std::max(0.5, words.most_width / width);
      const auto kept = static_cast<std::size_t>(share * static_cast<double>(text.length()));
      text = text.Left(std::max<std::size_t>(1, std::min(kept, text.length() - 2))) +
             wxString::FromUTF8("…");
      graphics_.GetTextExtent(text, &width, &height);
    }
    double x = words.at.x;
    double y = words.at.y;
    if (words.across == picture::Across::middle) x -= width / 2;
    if (words.across == picture::Across::right) x -= width;
    if (words.down == picture::Down::middle) y -= height / 2;
    if (words.down == picture::Down::bottom) y -= height;
    graphics_.DrawText(text, x, y);
  }

  /// Behind the marks.
  void ground_of(const picture::Stop& stop) const {
    const auto& [left, top, right, bottom] = stop.area;
    graphics_.SetPen(*wxTRANSPARENT_PEN);
    graphics_.SetBrush(wxBrush{look_.palette.chosen});
    graphics_.DrawRectangle(left, top, right - left, bottom - top);
  }

  /// Over the marks.
  void ring_of(const picture::Stop& stop) const {
    const auto& [left, top, right, bottom] = stop.area;
    const auto& colour = look_.has_focus ? look_.palette.ahead : look_.palette.past;
    graphics_.SetPen(
        pen_of(graphics_, colour, Line::solid, (look_.has_focus ? 2 : 1) * look_.unit));
    graphics_.SetBrush(*wxTRANSPARENT_BRUSH);
    graphics_.DrawRoundedRectangle(left + look_.unit, top + look_.unit,
                                   right - left - 2 * look_.unit, bottom - top - 2 * look_.unit,
                                   2 * look_.unit);
  }

 private:
  void fill(const wxGraphicsPath& path, const std::vector<picture::Spot>& spots, Fill fill,
            picture::Ink ink) const {
    const auto& colour = look_.palette.of(ink);
    if (fill == Fill::none) return;
    graphics_.SetPen(*wxTRANSPARENT_PEN);
    if (fill == Fill::solid) {
      graphics_.SetBrush(wxBrush{colour});
      graphics_.FillPath(path);
      return;
    }
    if (fill == Fill::hatched) {
      graphics_.SetPen(pen_of(graphics_, colour, Line::solid, look_.unit));
      for (const auto& [from, to] : picture::hatching(spots, 7 * look_.unit)) {
        graphics_.StrokeLine(from.x, from.y, to.x, to.y);
      }
      return;
    }
    const double size = 0.8 * look_.unit;
    auto dots = graphics_.CreatePath();
    for (const auto& dot : picture::dots_within(spots, 6 * look_.unit)) {
      dots.AddRectangle(dot.x - size, dot.y - size, 2 * size, 2 * size);
    }
    graphics_.SetBrush(wxBrush{colour});
    graphics_.FillPath(dots);
  }

  void outline(const wxGraphicsPath& path, Line line, picture::Ink ink, double width) const {
    if (line == Line::none) return;
    graphics_.SetPen(pen_of(graphics_, look_.palette.of(ink), line, width * look_.unit));
    graphics_.StrokePath(path);
  }

  wxGraphicsContext& graphics_;
  const Look& look_;
};

}  // namespace

picture::Room room_for(const wxFont& font, double width, double height, double unit) {
  const std::shared_ptr<wxGraphicsContext> measuring{wxGraphicsContext::Create()};
  measuring->SetFont(font, *wxBLACK);
  picture::Room room;
  room.width = width;
  room.height = height;
  room.unit = unit;
  double wide = 0;
  measuring->GetTextExtent("Ag", &wide, &room.line_height);
  room.text_width = [measuring](std::string_view text) {
    double w = 0;
    double h = 0;
    measuring->GetTextExtent(to_wx(text), &w, &h);
    return w;
  };
  return room;
}

void paint_picture(wxGraphicsContext& graphics, const picture::Picture& picture, const Look& look) {
  const Painter painter{graphics, look};
  const auto chosen = std::ranges::find(picture.stops, look.chosen, &picture::Stop::id);
  if (chosen != picture.stops.end()) painter.ground_of(*chosen);
  for (const auto& mark : picture.marks) std::visit(painter, mark);
  if (chosen != picture.stops.end()) painter.ring_of(*chosen);
}

wxBitmap picture_bitmap(const picture::Picture& picture, const wxFont& font, double unit,
                        double scale) {
  const double margin = 8 * unit;
  const Look look{paper_palette(), font, unit, {}, false};
  const double title = room_for(font, 0, 0, unit).line_height + margin;
  wxBitmap bitmap{static_cast<int>(std::ceil((picture.width + 2 * margin) * scale)),
                  static_cast<int>(std::ceil((picture.height + 2 * margin + title) * scale)), 24};
  wxMemoryDC dc{bitmap};
  dc.SetBackground(*wxWHITE_BRUSH);
  dc.Clear();
  const std::unique_ptr<wxGraphicsContext> graphics{wxGraphicsContext::Create(dc)};
  if (!graphics) return bitmap;
  graphics->Scale(scale, scale);
  graphics->Translate(margin, margin);
  Painter{*graphics, look}(picture::Words{{0, 0},
                                          picture.title,
                                          picture::Across::left,
                                          picture::Down::top,
                                          picture::Ink::text,
                                          true,
                                          picture.width});
  graphics->Translate(0, title);
  paint_picture(*graphics, picture, look);
  return bitmap;
}

}  // namespace sparewell::desktop
