/// Paints pictures on the screen, into bitmaps and on paper.
#pragma once

#include <string>

#include <wx/font.h>

#include "desk/picture/picture.hpp"
#include "desktop/chart/palette.hpp"

class wxGraphicsContext;
class wxBitmap;

namespace sparewell::desktop {

struct Look {
  Palette palette;
  wxFont font;
  double unit = 1;         ///< one device-independent pixel
  std::string chosen;      ///< id of the stop that is set apart; "" for none
  bool has_focus = false;  ///< whether the keyboard is with the picture
};

/// What a picture of this size has room for in this font.
[[nodiscard]] picture::Room room_for(const wxFont& font, double width, double height, double unit);

/// From the place 0, 0 on. The ground is left to the caller.
void paint_picture(wxGraphicsContext& graphics, const picture::Picture& picture, const Look& look);

/// The picture for other programs and sheets: black and greys on white, with its title, `scale`
/// pixels for each of its own.
[[nodiscard]] wxBitmap picture_bitmap(const picture::Picture& picture, const wxFont& font,
                                      double unit, double scale);

}  // namespace sparewell::desktop
