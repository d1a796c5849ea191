/// The colours of pictures: the system's own on the screen, black and greys on paper.
#pragma once

#include <wx/colour.h>

#include "desk/picture/picture.hpp"

namespace sparewell::desktop {

struct Palette {
  wxColour paper;
  wxColour text;
  wxColour faint;   ///< axes and grids
  wxColour past;    ///< what has been
  wxColour ahead;   ///< what is foreseen
  wxColour chosen;  ///< behind what is chosen
  wxColour alarm;

  [[nodiscard]] const wxColour& of(picture::Ink ink) const;
};

/// From the system's colours of lists, so that light and dark themes both work.
[[nodiscard]] Palette screen_palette();
/// For a white sheet, and for printers that have no colours.
[[nodiscard]] Palette paper_palette();

}  // namespace sparewell::desktop
