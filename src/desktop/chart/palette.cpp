#include "desktop/chart/palette.hpp"

#include <wx/settings.h>

namespace sparewell::desktop {
namespace {

wxColour mixed(const wxColour& a, const wxColour& b, double share) {
  const auto part = [&](unsigned char x, unsigned char y) {
    return static_cast<unsigned char>(x * share + y * (1 - share));
  };
  return {part(a.Red(), b.Red()), part(a.Green(), b.Green()), part(a.Blue(), b.Blue())};
}

wxColour grey(unsigned char light) {
  return {light, light, light};
}

}  // namespace

const wxColour& Palette::of(picture::Ink ink) const {
  switch (ink) {
    case picture::Ink::paper:
      return paper;
    case picture::Ink::text:
      return text;
    case picture::Ink::faint:
      return faint;
    case picture::Ink::past:
      return past;
    case picture::Ink::ahead:
      return ahead;
    case picture::Ink::chosen:
      return chosen;
    case picture::Ink::alarm:
      return alarm;
  }
  return text;
}

Palette screen_palette() {
  Palette colours;
  colours.paper = wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX);
  colours.text = wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOXTEXT);
  const auto accent = wxSystemSettings::GetColour(wxSYS_COLOUR_HIGHLIGHT);
  const bool dark = colours.paper.GetLuminance() < 0.5;
  colours.faint = mixed(colours.text, colours.paper, 0.22);
  colours.past = mixed(colours.text, colours.paper, 0.5);
  // The accents of dark themes are made for white letters upon them and too dark for lines.
  colours.ahead = mixed(accent, colours.text, dark ? 0.6 : 0.8);
  colours.chosen = mixed(accent, colours.paper, 0.18);
  // The systems name no colour of alarm; either keeps a contrast of 5 to 1 on its ground.
  colours.alarm = dark ? wxColour{255, 138, 128} : wxColour{176, 32, 32};
  return colours;
}

Palette paper_palette() {
  return {*wxWHITE, *wxBLACK, grey(200), grey(128), grey(40), grey(228), *wxBLACK};
}

}  // namespace sparewell::desktop
