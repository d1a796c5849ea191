#include "desktop/widgets/score_chart.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/step_keys.hpp"
#include "desktop/widgets/score_paint.hpp"

namespace sparewell::desktop {
namespace {

constexpr auto name = "Test of the forecasts, drawn";

}  // namespace

ScoreChart::ScoreChart(wxWindow* parent)
    : wxWindow{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxWANTS_CHARS | wxBORDER_THEME} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(*this, name);
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out();
  });
  Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) {
    SetFocus();
    if (const auto entry = entry_at(event.GetPosition())) choose(*entry);
  });
  Bind(wxEVT_MOTION, [this](wxMouseEvent& event) { on_move(event.GetPosition()); });
  Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) {
    on_step_key(*this, event, [this](int by) { step(by); });
  });
  const auto redraw = [this](wxFocusEvent& event) {
    event.Skip();
    Refresh();
  };
  Bind(wxEVT_SET_FOCUS, redraw);
  Bind(wxEVT_KILL_FOCUS, redraw);
}

void ScoreChart::show(std::vector<desk::ScoreEntry> entries) {
  entries_ = std::move(entries);
  SetMinSize({FromDIP(300),
              axis_height() + static_cast<int>(entries_.size()) * least_row_height() + FromDIP(4)});
  lay_out();
}

void ScoreChart::mark(const std::string& id) {
  marked_ = id;
  if (const auto entry = marked_entry()) {
    set_accessible_name(*this, name, entries_[*entry].words);
  }
  Refresh();
}

std::optional<std::size_t> ScoreChart::marked_entry() const {
  const auto found = std::ranges::find(entries_, marked_, &desk::ScoreEntry::id);
  if (found == entries_.end()) return std::nullopt;
  return static_cast<std::size_t>(found - entries_.begin());
}

int ScoreChart::least_row_height() const {
  return GetCharHeight() + FromDIP(6);
}

int ScoreChart::axis_height() const {
  return 2 * GetCharHeight() + FromDIP(8);
}

desk::ChartMeasures ScoreChart::measures() const {
  desk::ChartMeasures measures;
  measures.width = GetClientSize().x;
  measures.axis_height = axis_height();
  // Rows grow with the window until their marks are large enough.
  const double least = least_row_height();
  const double room = GetClientSize().y - measures.axis_height;
  const auto rows = static_cast<double>(std::max<std::size_t>(1, entries_.size()));
  measures.row_height = std::clamp(std::floor(room / rows), least, 2.2 * least);
  measures.gap = FromDIP(24);
  measures.tick_label_width = GetTextExtent("0000").x;
  for (const auto& entry : entries_) {
    const auto width = GetTextExtent(to_wx(entry.label)).x + FromDIP(24);
    measures.label_width = std::max(measures.label_width, static_cast<double>(width));
  }
  return measures;
}

void ScoreChart::lay_out() {
  drawing_ = desk::draw_scores(entries_, measures());
  Refresh();
}

void ScoreChart::paint() {
  wxAutoBufferedPaintDC dc{this};
  const auto colours = strip_colours();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics || entries_.empty()) return;
  if (const auto entry = marked_entry()) {
    graphics->SetBrush(wxBrush{colours.marked});
    graphics->SetPen(HasFocus() ? wxPen{colours.ahead} : *wxTRANSPARENT_PEN);
    graphics->DrawRectangle(1, drawing_.rows[*entry].top, GetClientSize().x - 2,
                            measures().row_height - 1);
  }
  paint_axes(*graphics, colours);
  for (const auto& row : drawing_.rows) paint_row(*graphics, colours, row);
}

void ScoreChart::paint_text(wxGraphicsContext& graphics, const std::string& text, double middle,
                            double top) const {
  double width = 0;
  double height = 0;
  const auto words = to_wx(text);
  graphics.GetTextExtent(words, &width, &height);
  const double last = GetClientSize().x - width - FromDIP(2);
  graphics.DrawText(words, std::min(middle - width / 2, last), top);
}

void ScoreChart::paint_axes(wxGraphicsContext& graphics, const StripColours& colours) const {
  const auto size = measures();
  const double labels = FromDIP(4) + GetCharHeight();
  const auto middle_of = [](const desk::Panel& panel) { return (panel.left + panel.right) / 2; };
  graphics.SetFont(GetFont().Bold(), colours.text);
  paint_text(graphics, "Ended within their span", middle_of(drawing_.coverage), FromDIP(2));
  paint_text(graphics, "Mean error in days", middle_of(drawing_.errors), FromDIP(2));
  graphics.SetFont(GetFont(), colours.text);
  for (const auto& tick : drawing_.nominal) {
    paint_nominal(graphics, colours, tick.x, size.axis_height - FromDIP(4), drawing_.height);
    paint_text(graphics, tick.label, tick.x, labels);
  }
  for (const auto& tick : drawing_.error_ticks) {
    graphics.SetPen(graphics.CreatePen(wxGraphicsPenInfo{colours.faint}.Width(1)));
    graphics.StrokeLine(tick.x, size.axis_height - FromDIP(4), tick.x, drawing_.height);
    paint_text(graphics, tick.label, tick.x, labels);
  }
}

void ScoreChart::paint_row(wxGraphicsContext& graphics, const StripColours& colours,
                           const desk::ScoreShape& row) const {
  const auto size = measures();
  const auto& entry = entries_[row.entry];
  graphics.SetFont(row.entry == 0 ? GetFont().Bold() : GetFont(), colours.text);
  graphics.DrawText(to_wx(entry.label), FromDIP(10),
                    row.top + (size.row_height - GetCharHeight()) / 2);
  const double mark = std::min(size.row_height / 6, GetCharHeight() * 0.4);
  for (std::size_t i = 0; i < row.marks.size(); ++i) {
    if (!row.marks[i]) continue;
    const auto& [x, low, high, y] = *row.marks[i];
    paint_interval(graphics, colours, low, high, y, mark * 0.8);
    paint_mark(graphics, colours, i, x, y, mark);
  }
  for (std::size_t i = 0; i < row.errors.size(); ++i) {
    if (!row.errors[i]) continue;
    const auto& [to, top, height] = *row.errors[i];
    paint_error(graphics, colours, i, drawing_.errors.left, to, top, height - 1);
  }
}

std::optional<std::size_t> ScoreChart::entry_at(const wxPoint& at) const {
  return drawing_.entry_at(at.y, measures().row_height);
}

void ScoreChart::choose(std::size_t entry) {
  mark(entries_[entry].id);
  if (selected_call_) selected_call_(marked_);
}

void ScoreChart::on_move(const wxPoint& at) {
  const auto entry = entry_at(at);
  const auto words = entry ? to_wx(entries_[*entry].words) : wxString{};
  if (GetToolTipText() != words) SetToolTip(words);
}

void ScoreChart::step(int by) {
  if (entries_.empty()) return;
  const auto at = marked_entry();
  if (!at) return choose(0);
  if (by < 0 && *at > 0) choose(*at - 1);
  if (by > 0 && *at + 1 < entries_.size()) choose(*at + 1);
}

}  // namespace sparewell::desktop
