#include "desktop/pages/plan_panel.hpp"

#include <wx/notebook.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/pages/plan/held_pane.hpp"
#include "desktop/pages/plan/play_pane.hpp"
#include "desktop/pages/plan/suppliers_pane.hpp"
#include "desktop/pages/plan/what_if_pane.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/pane_book.hpp"

namespace sparewell::desktop {

PlanPanel::PlanPanel(wxWindow* parent, Actions actions) : Page{parent} {
  panes_ = new wxNotebook{this, wxID_ANY};
  set_accessible_name(*panes_, said("Plan"));
  play_pane_ = new PlayPane{room_for_pane(*panes_), std::move(actions.play)};
  add_pane(*panes_, play_pane_, said("What the order policy saves"));
  what_if_pane_ = new WhatIfPane{room_for_pane(*panes_), std::move(actions.compare)};
  add_pane(*panes_, what_if_pane_, said("What if"));
  held_pane_ = new HeldPane{room_for_pane(*panes_), std::move(actions.go_to_unit),
                            std::move(actions.keep_to)};
  add_pane(*panes_, held_pane_, said("Held back"));
  suppliers_pane_ = new SuppliersPane{room_for_pane(*panes_), std::move(actions.go_to_order)};
  add_pane(*panes_, suppliers_pane_, said("Suppliers"));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(panes_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
}

void PlanPanel::show(const desk::DayPtr& day) {
  // What was played may still hold; see show_play.
  what_if_pane_->show(day);
  held_pane_->show(day);
  panes_->SetPageText(static_cast<std::size_t>(Pane::held), to_wx(held_pane_->title()));
  suppliers_pane_->show(day);
}

void PlanPanel::find() {
  switch (static_cast<Pane>(panes_->GetSelection())) {
    case Pane::play:
      return play_pane_->focus_rows();
    case Pane::what_if:
      return what_if_pane_->focus_rows();
    case Pane::held:
      return held_pane_->find();
    case Pane::suppliers:
      return suppliers_pane_->focus_rows();
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

void PlanPanel::allow_budget(bool allowed) {
  held_pane_->allow_working(allowed);
}

void PlanPanel::open(Pane pane) {
  panes_->SetSelection(static_cast<std::size_t>(pane));
  if (pane == Pane::held || pane == Pane::suppliers) find();
}

}  // namespace sparewell::desktop
