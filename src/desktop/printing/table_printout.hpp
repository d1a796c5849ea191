/// Puts lists on paper, with a preview.
#pragma once

#include <wx/print.h>

#include "desk/printing/page_layout.hpp"

namespace sparewell::desktop {

class TablePrintout : public wxPrintout {
 public:
  TablePrintout(desk::Printable printable, const wxPageSetupDialogData& setup);

  void OnPreparePrinting() override;
  void GetPageInfo(int* first, int* last, int* from, int* to) override;
  bool HasPage(int page) override;
  bool OnPrintPage(int page) override;

 private:
  /// The paper of the page, with text of so many points.
  [[nodiscard]] desk::PaperSize paper_of(const wxRect& room, double points);
  [[nodiscard]] wxFont font_of(desk::PrintFont font) const;
  /// Makes the printer's units those of the screen, within the margins.
  wxRect map_page();

  desk::Printable printable_;
  wxPageSetupDialogData setup_;
  double points_ = 9;  ///< size of text
  std::vector<desk::PrintedPage> pages_;
};

/// Shows how it will look; it can be printed, and the paper be changed, from there.
void preview_print(wxWindow* parent, const desk::Printable& printable);

}  // namespace sparewell::desktop
