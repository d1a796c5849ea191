#include "desktop/pages/plan_panel.hpp"

#include <wx/notebook.h>
#include <wx/sizer.h>

#include "desktop/pages/plan/play_pane.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {

PlanPanel::PlanPanel(wxWindow* parent, std::function<void()> play) : Page{parent} {
  panes_ = new wxNotebook{this, wxID_ANY};
  set_accessible_name(*panes_, "Plan");
  play_pane_ = new PlayPane{panes_, std::move(play)};
  panes_->AddPage(play_pane_, "What the order policy saves");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(panes_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
}

void PlanPanel::show(const desk::DayPtr&) {
  // What is shown here was played; see show_play.
}

void PlanPanel::find() {
  open(Pane::play);
  play_pane_->focus_rows();
}

void PlanPanel::show_play(const desk::PolicyPlayPtr& play) {
  play_pane_->show_play(play);
}

void PlanPanel::allow_playing(bool allowed) {
  play_pane_->allow_playing(allowed);
}

void PlanPanel::open(Pane pane) {
  panes_->SetSelection(static_cast<std::size_t>(pane));
}

}  // namespace sparewell::desktop
