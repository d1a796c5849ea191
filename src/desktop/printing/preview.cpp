#include <wx/button.h>
#include <wx/msgdlg.h>
#include <wx/printdlg.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/printing/table_printout.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

/// Paper, margins and printer, for as long as the program runs.
wxPageSetupDialogData& paper_setup() {
  static wxPageSetupDialogData setup = [] {
    wxPageSetupDialogData made;
    wxPrintData data;
    data.SetPaperId(wxPAPER_A4);
    made.SetPrintData(data);
    made.SetMarginTopLeft({15, 15});
    made.SetMarginBottomRight({15, 15});
    return made;
  }();
  return setup;
}

class PreviewBar : public wxPreviewControlBar {
 public:
  PreviewBar(wxPrintPreviewBase* preview, wxWindow* parent, std::function<void()> change_paper)
      : wxPreviewControlBar{preview, wxPREVIEW_PRINT | wxPREVIEW_DEFAULT, parent, wxDefaultPosition,
                            wxDefaultSize},
        change_paper_{std::move(change_paper)} {}

  void CreateButtons() override {
    wxPreviewControlBar::CreateButtons();
    name(wxID_PREVIEW_PRINT, said("Print this list"));
    name(wxID_PREVIEW_FIRST, said("First page"));
    name(wxID_PREVIEW_PREVIOUS, said("Previous page"));
    name(wxID_PREVIEW_NEXT, said("Next page"));
    name(wxID_PREVIEW_LAST, said("Last page"));
    name(wxID_PREVIEW_ZOOM_OUT, said("Smaller picture"));
    name(wxID_PREVIEW_ZOOM_IN, said("Larger picture"));
    auto* paper = new wxButton{this, wxID_ANY, to_wx(say("Pa&per and margins..."))};
    paper->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { change_paper_(); });
    GetSizer()->Add(paper, wxSizerFlags{}.CentreVertical().Border(wxLEFT, FromDIP(8)));
  }

 private:
  /// They are pictures, which a screen reader cannot tell.
  void name(int id, const char* words) {
    if (auto* button = FindWindow(id)) set_accessible_name(*button, words);
  }

  std::function<void()> change_paper_;
};

class PreviewFrame : public wxPreviewFrame {
 public:
  PreviewFrame(wxWindow* parent, wxPrintPreviewBase* preview, const desk::Printable& printable)
      : wxPreviewFrame{preview, parent, to_wx(say("Print: {}", printable.title)), wxDefaultPosition,
                       parent->FromDIP(wxSize{1120, 720})},
        parent_{parent},
        printable_{printable} {}

  void CreateControlBar() override {
    m_controlBar = new PreviewBar{m_printPreview, this, [this] { change_paper(); }};
    m_controlBar->CreateButtons();
  }

 private:
  void change_paper() {
    wxPageSetupDialog dialog{this, &paper_setup()};
    if (dialog.ShowModal() != wxID_OK) return;
    paper_setup() = dialog.GetPageSetupDialogData();
    // The frame goes first: its preview holds the paper it was made for.
    auto* parent = parent_;
    parent->CallAfter([parent, printable = printable_] { preview_print(parent, printable); });
    Close();
  }

  wxWindow* parent_;
  desk::Printable printable_;
};

}  // namespace

void preview_print(wxWindow* parent, const desk::Printable& printable) {
  static bool asked = false;
  auto& setup = paper_setup();
  if (!asked) {
    // The first list decides; then it is what was chosen last.
    setup.GetPrintData().SetOrientation(desk::wants_landscape(printable) ? wxLANDSCAPE
                                                                         : wxPORTRAIT);
    asked = true;
  }
  wxPrintDialogData data{setup.GetPrintData()};
  auto* preview = new wxPrintPreview{new TablePrintout{printable, setup},
                                     new TablePrintout{printable, setup}, &data};
  if (!preview->IsOk()) {
    delete preview;
    wxMessageBox(to_wx(say("The preview cannot be made. Look whether a printer is set up.")),
                 to_wx(say("Print")), wxOK | wxICON_WARNING, parent);
    return;
  }
  auto* frame = new PreviewFrame{parent, preview, printable};
  frame->InitializeWithModality(wxPreviewFrame_WindowModal);
  frame->Centre();
  frame->Show();
}

}  // namespace sparewell::desktop
