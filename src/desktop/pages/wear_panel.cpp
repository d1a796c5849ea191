#include "desktop/pages/wear_panel.hpp"

#include <algorithm>

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/notebook.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desk/commands.hpp"
#include "desktop/pages/wear/early_pane.hpp"
#include "desktop/pages/wear/effects_pane.hpp"
#include "desktop/pages/wear/test_pane.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/pane_book.hpp"

namespace sparewell::desktop {

WearPanel::WearPanel(wxWindow* parent, std::function<void()> test,
                     std::function<void(std::size_t)> go_to)
    : Page{parent} {
  auto* top = make_top(std::move(test));
  panes_ = new wxNotebook{this, wxID_ANY};
  set_accessible_name(*panes_, said("Wear"));
  test_pane_ = new TestPane{room_for_pane(*panes_), page_,
                            [this](std::optional<Kind> kind) { choose(kind); }};
  effects_pane_ = new EffectsPane{room_for_pane(*panes_), page_};
  early_pane_ = new EarlyPane{room_for_pane(*panes_), page_, std::move(go_to)};
  add_pane(*panes_, test_pane_, said("How good forecasts are"));
  add_pane(*panes_, effects_pane_, said("What changes lives"));
  add_pane(*panes_, early_pane_, said("Early endings"));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(panes_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
}

wxSizer* WearPanel::make_top(std::function<void()> test) {
  auto* label = new wxStaticText{this, wxID_ANY, said("&Kind of part:")};
  kinds_ = new wxChoice{this, wxID_ANY};
  for (const auto& kind : desk::kind_choices()) kinds_->Append(to_wx(desk::kind_title(kind)));
  kinds_->SetSelection(0);
  set_accessible_name(*kinds_, said("Kind of part"));
  kinds_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
    choose(desk::kind_choices().at(static_cast<std::size_t>(event.GetSelection())));
  });
  const auto& spec = desk::command_spec(desk::Command::test_forecasts);
  test_ = new wxButton{this, wxID_ANY, to_wx(spec.label)};
  test_->SetToolTip(to_wx(tooltip_words(spec)));
  test_->Bind(wxEVT_BUTTON, [test = std::move(test)](wxCommandEvent&) { test(); });
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(label, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(kinds_, wxSizerFlags{}.CentreVertical());
  top->AddStretchSpacer(1);
  top->Add(test_, wxSizerFlags{}.CentreVertical());
  return top;
}

void WearPanel::show(const desk::DayPtr& day) {
  page_.show(day);
  effects_pane_->changed();
  early_pane_->day_changed();
}

void WearPanel::show_test(const desk::ForecastTestPtr& test) {
  page_.show_test(test);
  test_pane_->test_changed();
}

void WearPanel::choose(std::optional<Kind> kind) {
  if (kind == page_.chosen()) return;
  page_.choose(kind);
  const auto choices = desk::kind_choices();
  kinds_->SetSelection(static_cast<int>(std::ranges::find(choices, kind) - choices.begin()));
  test_pane_->kind_changed();
  effects_pane_->changed();
  early_pane_->kind_changed();
}

void WearPanel::find() {
  open(Pane::early);
  early_pane_->find();
}

void WearPanel::allow_testing(bool allowed) {
  test_->Enable(allowed);
}

void WearPanel::open(Pane pane) {
  panes_->SetSelection(static_cast<std::size_t>(pane));
}

}  // namespace sparewell::desktop
