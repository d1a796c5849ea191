#include "desktop/widgets/life_chart.hpp"

#include <memory>

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/life_paint.hpp"
#include "desktop/widgets/step_keys.hpp"

namespace sparewell::desktop {

LifeChart::LifeChart(wxWindow* parent)
    : wxScrolled<wxWindow>{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                           wxVSCROLL | wxWANTS_CHARS | wxBORDER_THEME} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(*this, "Lives of the parts, drawn");
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out();
  });
  Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) {
    SetFocus();
    on_click(event.GetPosition());
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

void LifeChart::show(std::vector<desk::StripEntry> entries, Date today) {
  entries_ = std::move(entries);
  today_ = today;
  lay_out();
}

void LifeChart::mark(const std::string& id) {
  marked_ = id;
  for (const auto& row : drawing_.rows) {
    if (entries_[row.entry].id != id || row.heading) continue;
    const auto view = GetViewStart().y;
    const auto height = GetClientSize().y;
    const auto top = static_cast<int>(row.top);
    const auto bottom = static_cast<int>(row.top + measures().row_height);
    if (top < view || bottom > view + height) Scroll(0, top);
  }
  say_marked();
  Refresh();
}

void LifeChart::say_marked() {
  for (const auto& entry : entries_) {
    if (entry.heading.empty() && entry.id == marked_) {
      set_accessible_name(*this, "Lives of the parts, drawn", entry.words);
    }
  }
}

desk::StripMeasures LifeChart::measures() const {
  std::vector<std::string> labels;
  for (const auto& entry : entries_) labels.push_back(entry.label);
  return strip_measures(*this, labels);
}

void LifeChart::lay_out() {
  drawing_ = desk::draw_lives(entries_, today_, measures());
  SetScrollRate(0, 1);
  SetVirtualSize(-1, static_cast<int>(drawing_.height));
  Refresh();
}

void LifeChart::paint() {
  wxAutoBufferedPaintDC dc{this};
  DoPrepareDC(dc);
  const auto colours = strip_colours();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics || entries_.empty()) return;
  paint_axis(*graphics);
  for (const auto& row : drawing_.rows) paint_row(*graphics, row);
}

void LifeChart::paint_axis(wxGraphicsContext& graphics) const {
  const auto colours = strip_colours();
  const auto axis = measures().axis_height;
  paint_axis_ticks(graphics, *this, drawing_.ticks, axis, drawing_.height);
  graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.text}.Width(2)));
  graphics.StrokeLine(drawing_.today, axis - FromDIP(4), drawing_.today, drawing_.height);
}

void LifeChart::paint_row(wxGraphicsContext& graphics, const desk::StripShape& row) const {
  const auto colours = strip_colours();
  const auto size = measures();
  const auto& entry = entries_[row.entry];
  const double middle = row.top + size.row_height / 2;
  const double thickness = size.row_height * 0.42;
  const double text_top = middle - GetCharHeight() / 2.0;
  if (row.heading) {
    graphics.SetFont(GetFont().Bold(), colours.text);
    graphics.DrawText(to_wx(entry.heading), FromDIP(6), text_top);
    return;
  }
  if (entry.id == marked_) {
    graphics.SetBrush(wxBrush{colours.marked});
    graphics.SetPen(HasFocus() ? wxPen{colours.ahead} : *wxTRANSPARENT_PEN);
    graphics.DrawRectangle(1, row.top, size.width - 2, size.row_height - 1);
  }
  graphics.PushState();
  graphics.Clip(0, row.top, size.label_width - FromDIP(8), size.row_height);
  graphics.SetFont(GetFont(), colours.text);
  graphics.DrawText(to_wx(entry.label), FromDIP(14), text_top);
  graphics.PopState();
  if (row.worn) paint_worn(graphics, colours, *row.worn, middle, thickness * 0.6);
  if (row.ahead) paint_ahead(graphics, colours, *row.ahead, middle, thickness);
  if (row.median) paint_median(graphics, colours, *row.median, middle, thickness * 0.7);
  if (row.order_by) {
    paint_order_by(graphics, colours, *row.order_by, middle, size.row_height * 0.38,
                   row.order_by_passed);
  }
}

std::optional<std::size_t> LifeChart::entry_at(const wxPoint& at) const {
  const auto place = CalcUnscrolledPosition(at);
  return drawing_.entry_at(place.y, measures().row_height);
}

void LifeChart::on_click(const wxPoint& at) {
  const auto entry = entry_at(at);
  if (!entry || !entries_[*entry].heading.empty()) return;
  mark(entries_[*entry].id);
  if (selected_call_) selected_call_(marked_);
}

void LifeChart::on_move(const wxPoint& at) {
  const auto entry = entry_at(at);
  const auto words = entry ? to_wx(entries_[*entry].words) : wxString{};
  if (GetToolTipText() != words) SetToolTip(words);
}

void LifeChart::step(int by) {
  std::vector<std::string> ids;
  std::size_t current = 0;
  for (const auto& entry : entries_) {
    if (!entry.heading.empty()) continue;
    if (entry.id == marked_) current = ids.size();
    ids.push_back(entry.id);
  }
  if (ids.empty()) return;
  if (by < 0 && current > 0) --current;
  if (by > 0 && current + 1 < ids.size()) ++current;
  mark(ids[current]);
  if (selected_call_) selected_call_(marked_);
}

LifeLegend::LifeLegend(wxWindow* parent) : wxWindow{parent, wxID_ANY} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  SetMinSize({FromDIP(100), GetCharHeight() + FromDIP(8)});
  set_accessible_name(
      *this, "Key to the drawing",
      "Bar: worn so far. Hatched: eight in ten wear out here. Diamond: even chance. "
      "Flag: order by, filled when that day has passed. Line: today.");
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    Refresh();
  });
}

void LifeLegend::paint() {
  wxAutoBufferedPaintDC dc{this};
  auto colours = strip_colours();
  colours.paper = GetParent()->GetBackgroundColour();
  colours.text = GetParent()->GetForegroundColour();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics) return;
  const double middle = GetClientSize().y / 2.0;
  const double wide = FromDIP(26);
  const double size = FromDIP(9);
  double x = FromDIP(4);
  const auto word = [&](const wxString& text) {
    double width = 0;
    double height = 0;
    graphics->SetFont(GetFont(), colours.text);
    graphics->GetTextExtent(text, &width, &height);
    graphics->DrawText(text, x, middle - height / 2);
    x += width + FromDIP(18);
  };
  paint_worn(*graphics, colours, {x, x + wide, false, false}, middle, size * 0.7);
  x += wide + FromDIP(6);
  word("worn so far");
  graphics->SetPen(graphics->CreatePen(wxGraphicsPenInfo{colours.text}.Width(2)));
  graphics->StrokeLine(x, middle - size, x, middle + size);
  x += FromDIP(6);
  word("today");
  paint_ahead(*graphics, colours, {x, x + wide, false, false}, middle, size);
  x += wide + FromDIP(6);
  word("8 in 10 wear out here");
  x += size;
  paint_median(*graphics, colours, x - size / 2, middle, size * 0.7);
  x += FromDIP(4);
  word("even chance");
  paint_order_by(*graphics, colours, x, middle, size, false);
  x += size + FromDIP(6);
  word("order by (filled: passed)");
}

}  // namespace sparewell::desktop
