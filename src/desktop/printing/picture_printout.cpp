#include "desktop/printing/picture_printout.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include <wx/graphics.h>
#include <wx/msgdlg.h>

#include "clinic/say.hpp"
#include "desk/picture/sheets.hpp"
#include "desktop/chart/paint.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

/// Logical units of a sheet, in which fonts have the size that they have on the screen.
constexpr double units_per_inch = 96;
constexpr double margin = 0.6 * units_per_inch;

}  // namespace

PicturePrintout::PicturePrintout(picture::Maker make, const wxFont& font)
    : wxPrintout{"Sparewell"}, make_{std::move(make)}, font_{font} {}

void PicturePrintout::OnPreparePrinting() {
  int width_mm = 0;
  int height_mm = 0;
  GetPageSizeMM(&width_mm, &height_mm);
  page_width_ = width_mm / 25.4 * units_per_inch;
  const double wide = page_width_ - 2 * margin;
  const double high = height_mm / 25.4 * units_per_inch - 2 * margin;
  // A drawing that fills what it is given is to be wider than high.
  const auto room = room_for(font_, wide, std::min(high, 0.6 * wide), 1);
  sheets_ = picture::sheets_of(make_(room), room, high);
}

bool PicturePrintout::HasPage(int page) {
  return page >= 1 && page <= static_cast<int>(sheets_.size());
}

void PicturePrintout::GetPageInfo(int* first, int* last, int* from, int* to) {
  *first = *from = 1;
  *last = *to = static_cast<int>(sheets_.size());
}

bool PicturePrintout::OnPrintPage(int page) {
  auto* dc = GetDC();
  if (!HasPage(page) || dc == nullptr) return false;
  const std::unique_ptr<wxGraphicsContext> graphics{wxGraphicsContext::CreateFromUnknownDC(*dc)};
  if (!graphics) return false;
  const double scale = dc->GetSize().x / page_width_;
  graphics->Scale(scale, scale);
  graphics->Translate(margin, margin);
  const Look look{paper_palette(), font_, 1, {}, false};
  for (const auto& [piece, from, to, at] : sheets_[static_cast<std::size_t>(page - 1)]) {
    graphics->PushState();
    graphics->Translate(0, at - from);
    // Printers set letters a little wider or narrower than they were measured.
    graphics->Clip(-margin / 2, from, page_width_ - margin, to - from);
    paint_picture(*graphics, piece, look);
    graphics->PopState();
  }
  return true;
}

void preview_picture(wxWindow& parent, const picture::Maker& make, const wxFont& font) {
  auto* preview =
      new wxPrintPreview{new PicturePrintout{make, font}, new PicturePrintout{make, font}};
  if (!preview->IsOk()) {
    delete preview;
    wxMessageBox(to_wx(say("No sheet can be drawn here. Copy the picture instead (Ctrl+C).")),
                 "Sparewell", wxICON_WARNING, &parent);
    return;
  }
  auto* frame =
      new wxPreviewFrame{preview, wxGetTopLevelParent(&parent), to_wx(say("Picture on paper")),
                         wxDefaultPosition, parent.FromDIP(wxSize{900, 760})};
  frame->Initialize();
  frame->Show();
}

}  // namespace sparewell::desktop
