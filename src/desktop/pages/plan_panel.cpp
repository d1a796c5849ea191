#include "desktop/pages/plan_panel.hpp"

#include <wx/notebook.h>
#include <wx/sizer.h>

#include "desktop/pages/plan/play_pane.hpp"
#include "desktop/pages/plan/what_if_pane.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {

PlanPanel::PlanPanel(wxWindow* parent, std::function<void()> play, std::function<void()> compare)
    : Page{parent} {
  panes_ = new wxNotebook{this, wxID_ANY};
  set_accessible_name(*panes_, "Plan");
  play_pane_ = new PlayPane{panes_, std::move(play)};
  panes_->AddPage(play_pane_, "What the order policy saves");
  what_if_pane_ = new WhatIfPane{panes_, std::move(compare)};
  panes_->AddPage(what_if_pane_, "What if");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(panes_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
}

void PlanPanel::show(const desk::DayPtr& day) {
  // What was played may still hold; see show_play.
  what_if_pane_->show(day);
}

void PlanPanel::find() {
  if (panes_->GetSelection() == static_cast<int>(Pane::what_if)) {
    what_if_pane_->focus_rows();
  } else {
    play_pane_->focus_rows();
  }
}

void PlanPanel::show_play(const desk::PolicyPlayPtr& play) {
  play_pane_->show_play(play);
}

void PlanPanel::allow_playing(bool allowed) {
  play_pane_->allow_playing(allowed);
}

desk::WhatIfQuestions PlanPanel::questions() const {
  return what_if_pane_->questions();
}

void PlanPanel::show_compared(const std::vector<desk::Compared>& compared) {
  what_if_pane_->show_compared(compared);
}

void PlanPanel::allow_comparing(bool allowed) {
  what_if_pane_->allow_comparing(allowed);
}

void PlanPanel::open(Pane pane) {
  panes_->SetSelection(static_cast<std::size_t>(pane));
}

}  // namespace sparewell::desktop
