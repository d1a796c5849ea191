/// A picture on paper, and how it will look there.
#pragma once

#include <vector>

#include <wx/font.h>
#include <wx/print.h>

#include "desk/picture/sheets.hpp"

namespace sparewell::desktop {

/// Draws the picture anew for the width of the sheet, in black and greys, with its title above and
/// its words below; what does not fit on a sheet goes on on the next, under the same axis.
class PicturePrintout : public wxPrintout {
 public:
  PicturePrintout(picture::Maker make, const wxFont& font);

  void OnPreparePrinting() override;
  bool HasPage(int page) override;
  bool OnPrintPage(int page) override;
  void GetPageInfo(int* first, int* last, int* from, int* to) override;

 private:
  picture::Maker make_;
  wxFont font_;
  std::vector<picture::Sheet> sheets_;
  double page_width_ = 0;  ///< in logical units
};

/// Opens the preview, from which it is printed.
void preview_picture(wxWindow& parent, const picture::Maker& make, const wxFont& font);

}  // namespace sparewell::desktop
