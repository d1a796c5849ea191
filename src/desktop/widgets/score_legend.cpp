#include <array>
#include <memory>

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/score_chart.hpp"
#include "desktop/widgets/score_paint.hpp"

namespace sparewell::desktop {
namespace {

constexpr double icon_width = 26;
constexpr double after_icon = 6;
constexpr double after_word = 18;

/// What stands in the key, in order: a drawn sign and its word.
constexpr std::array<const char*, 8> key_words{
    "50 % spans",
    "80 % spans",
    "95 % spans",
    "95 % interval",
    "where it should be",
    "Sparewell",
    "fixed calendar interval",
    "one law for each kind",
};

void paint_sign(wxGraphicsContext& graphics, const StripColours& colours, std::size_t sign,
                double x, double middle, double wide, double size) {
  if (sign < 3) return paint_mark(graphics, colours, sign, x + wide / 2, middle, size * 0.5);
  if (sign == 3) return paint_interval(graphics, colours, x, x + wide, middle, size * 0.4);
  if (sign == 4)
    return paint_nominal(graphics, colours, x + wide / 2, middle - size, middle + size);
  paint_error(graphics, colours, sign - 5, x, x + wide, middle - size * 0.5, size);
}

}  // namespace

ScoreLegend::ScoreLegend(wxWindow* parent) : wxWindow{parent, wxID_ANY} {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  set_accessible_name(
      *this, "Key to the drawing",
      "Disc: 50 % spans. Square: 80 % spans. Triangle: 95 % spans. Line through the mark: where "
      "the true figure lies, with 95 % confidence. Dashed line: where the marks should be. Solid "
      "bar: Sparewell. Hatched bar: fixed calendar interval. Empty bar: one law for each kind.");
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out();
  });
}

void ScoreLegend::lay_out() {
  std::vector<double> widths;
  for (const auto* words : key_words) {
    widths.push_back(FromDIP(wxSize{static_cast<int>(icon_width + after_icon + after_word), 0}).x +
                     GetTextExtent(words).x);
  }
  places_ = desk::flow(widths, GetClientSize().x - FromDIP(8));
  const wxSize least{FromDIP(100), (places_.back().line + 1) * (GetCharHeight() + FromDIP(6))};
  Refresh();
  if (GetMinSize() == least) return;
  SetMinSize(least);
  // Not while the page is being laid out.
  CallAfter([this] { GetGrandParent()->Layout(); });
}

void ScoreLegend::paint() {
  wxAutoBufferedPaintDC dc{this};
  auto colours = strip_colours();
  colours.paper = GetParent()->GetBackgroundColour();
  colours.text = GetParent()->GetForegroundColour();
  const auto graphics = begin_drawing(dc, colours.paper);
  if (!graphics) return;
  graphics->SetFont(GetFont(), colours.text);
  const double line = GetCharHeight() + FromDIP(6);
  for (std::size_t i = 0; i < places_.size(); ++i) {
    const double x = FromDIP(4) + places_[i].x;
    const double middle = (places_[i].line + 0.5) * line;
    const double wide = FromDIP(static_cast<int>(icon_width));
    paint_sign(*graphics, colours, i, x, middle, wide, FromDIP(9));
    graphics->SetFont(GetFont(), colours.text);
    graphics->DrawText(key_words[i], x + wide + FromDIP(static_cast<int>(after_icon)),
                       middle - GetCharHeight() / 2.0);
  }
}

}  // namespace sparewell::desktop
