#include "desktop/widgets/worn_chart.hpp"

#include <algorithm>
#include <memory>

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/life_paint.hpp"

namespace sparewell::desktop {
namespace {

constexpr auto reactions_label = "Reactions";

}  // namespace

WornChart::WornChart(wxWindow* parent, desk::WornChart chart)
    : wxScrolled<wxWindow>{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                           wxVSCROLL | wxWANTS_CHARS | wxBORDER_THEME},
      chart_{std::move(chart)} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(*this, "What was worn, and reactions, drawn", desk::worn_chart_words(chart_));
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out();
  });
  Bind(wxEVT_MOTION, [this](wxMouseEvent& event) { on_move(event.GetPosition()); });
  Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) {
    if (event.GetKeyCode() != WXK_TAB) return event.Skip();
    Navigate(event.ShiftDown() ? wxNavigationKeyEvent::IsBackward
                               : wxNavigationKeyEvent::IsForward);
  });
}

desk::StripMeasures WornChart::measures() const {
  std::vector<std::string> labels{reactions_label};
  for (const auto& strip : chart_.strips) labels.push_back(strip.label);
  return strip_measures(*this, labels);
}

void WornChart::lay_out() {
  drawing_ = desk::draw_worn(chart_, measures());
  SetScrollRate(0, 1);
  SetVirtualSize(-1, static_cast<int>(drawing_.height));
  Refresh();
}

void WornChart::paint() {
  wxAutoBufferedPaintDC dc{this};
  DoPrepareDC(dc);
  const auto colours = strip_colours();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics) return;
  paint_axis_ticks(*graphics, *this, drawing_.ticks, measures().axis_height, drawing_.height);
  graphics->SetPen(graphics->CreatePen(wxGraphicsPenInfo{colours.text}.Width(2)));
  graphics->StrokeLine(drawing_.today, measures().axis_height, drawing_.today, drawing_.height);
  for (const auto& row : drawing_.rows) paint_row(*graphics, row);
  graphics->SetFont(GetFont().Bold(), colours.text);
  graphics->DrawText(reactions_label, FromDIP(6), drawing_.marks_top + FromDIP(4));
  for (const auto& mark : drawing_.marks) paint_mark(*graphics, mark);
  // Over the lines, which would cross their letters.
  graphics->SetFont(GetFont().Bold(), colours.text);
  for (const auto& row : drawing_.rows) {
    if (!row.heading) continue;
    graphics->DrawText(to_wx(chart_.strips[row.strip].heading), FromDIP(6), row.top + FromDIP(4),
                       graphics->CreateBrush(wxBrush{colours.paper}));
  }
}

void WornChart::paint_row(wxGraphicsContext& graphics, const desk::WornShape& row) const {
  const auto colours = strip_colours();
  const auto size = measures();
  const auto& strip = chart_.strips[row.strip];
  const double middle = row.top + size.row_height / 2;
  const double text_top = middle - GetCharHeight() / 2.0;
  if (row.heading) return;
  graphics.PushState();
  graphics.Clip(0, row.top, size.label_width - FromDIP(8), size.row_height);
  graphics.SetFont(GetFont(), colours.text);
  graphics.DrawText(to_wx(strip.label), FromDIP(14), text_top);
  graphics.PopState();
  for (const auto& worn : row.worn) {
    paint_worn(graphics, colours, worn, middle, size.row_height * 0.35);
  }
}

/// A triangle with its number, filled when the reaction is in the log, and a line through all rows.
void WornChart::paint_mark(wxGraphicsContext& graphics, const desk::ReactionMark& mark) const {
  const auto colours = strip_colours();
  const double size = GetCharHeight() * 0.5;
  const double bottom = drawing_.marks_top + measures().row_height - FromDIP(3);
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.ahead}.Width(1.5)));
  graphics.StrokeLine(mark.x, bottom, mark.x, drawing_.height);
  auto path = graphics.CreatePath();
  path.MoveToPoint(mark.x, bottom);
  path.AddLineToPoint(mark.x - size * 0.7, bottom - size);
  path.AddLineToPoint(mark.x + size * 0.7, bottom - size);
  path.CloseSubpath();
  graphics.SetBrush(wxBrush{mark.recorded ? colours.ahead : colours.paper});
  graphics.DrawPath(path);
  graphics.SetFont(GetFont(), colours.text);
  graphics.DrawText(to_wx(mark.number), mark.x + size * 0.9, drawing_.marks_top + FromDIP(2));
}

void WornChart::on_move(const wxPoint& at) {
  const auto place = CalcUnscrolledPosition(at);
  wxString words;
  if (const auto mark = drawing_.mark_at(place.x, FromDIP(5))) {
    words = to_wx(desk::entry_words(chart_.reactions[*mark]));
  } else if (const auto strip = drawing_.strip_at(place.y, measures().row_height)) {
    words = to_wx(chart_.strips[*strip].words);
  }
  if (GetToolTipText() != words) SetToolTip(words);
}

}  // namespace sparewell::desktop
