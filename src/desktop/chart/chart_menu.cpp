#include "desktop/chart/chart_menu.hpp"

#include <wx/clipbrd.h>
#include <wx/image.h>
#include <wx/imagpng.h>
#include <wx/menu.h>
#include <wx/msgdlg.h>

#include "clinic/say.hpp"
#include "desk/picture/figure_table.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/chart/paint.hpp"
#include "desktop/chart/picture_text_dialog.hpp"
#include "desktop/printing/picture_printout.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

/// Sharp on paper as well.
constexpr double copied_scale = 2;

void copy(ChartView& view, wxDataObject* data) {
  if (wxTheClipboard->Open()) {
    wxTheClipboard->SetData(data);
    wxTheClipboard->Close();
    return;
  }
  delete data;
  wxMessageBox(to_wx(say("Nothing was copied: another program holds the clipboard. Try again.")),
               to_wx(view.picture().title), wxICON_WARNING, &view);
}

void copy_picture(ChartView& view) {
  // In this form other programs are given it.
  if (wxImage::FindHandler(wxBITMAP_TYPE_PNG) == nullptr) wxImage::AddHandler(new wxPNGHandler);
  copy(view, new wxBitmapDataObject{picture_bitmap(view.picture(), view.GetFont(),
                                                   view.FromDIP(100) / 100.0, copied_scale)});
}

void copy_table(ChartView& view) {
  copy(view, new wxTextDataObject{to_wx(picture::tab_separated(view.picture().table))});
}

}  // namespace

void show_chart_menu(ChartView& view, const wxPoint& at, const picture::Maker& make) {
  if (!make) return;
  wxMenu menu;
  const auto add = [&](const std::string& label, std::function<void()> run) {
    const auto* item = menu.Append(wxID_ANY, to_wx(label));
    menu.Bind(
        wxEVT_MENU, [run = std::move(run)](wxCommandEvent&) { run(); }, item->GetId());
  };
  add(say("Copy as &picture\tCtrl+C"), [&] { copy_picture(view); });
  add(say("Copy as &table"), [&] { copy_table(view); });
  menu.AppendSeparator();
  add(say("Show as te&xt..."), [&] { PictureTextDialog{&view, view.picture()}.ShowModal(); });
  add(say("P&rint..."), [&] { preview_picture(view, make, view.GetFont()); });
  view.PopupMenu(&menu, at);
}

bool copy_by_key(const wxKeyEvent& event, ChartView& view) {
  if (event.GetModifiers() != wxMOD_CONTROL || event.GetKeyCode() != 'C') return false;
  if (!view.picture().title.empty()) copy_picture(view);
  return true;
}

}  // namespace sparewell::desktop
