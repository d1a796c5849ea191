#include "desktop/pages/plan/held_pane.hpp"

#include <algorithm>

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/scroll_to_focus.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

HeldPane::HeldPane(wxWindow* parent, std::function<void(std::size_t)> go_to,
                   std::function<void(const std::optional<Money>&)> keep_to)
    : wxScrolledWindow{parent}, go_to_{std::move(go_to)} {
  // In the order in which the Tab key goes through them.
  needs_summary_ = new WrappedLabel{this};
  needs_summary_->SetFont(needs_summary_->GetFont().Bold());
  auto* needs_row = make_needs_row();
  needs_ = new TableView{this, page_.needs(), said("Parts held back")};
  needs_->set_least_rows(4);
  needs_->when_selected([this](const std::string& id) {
    show_patient_->Enable(!id.empty());
    words_->set_text(page_.words(id));
    Layout();
  });
  needs_->when_chosen([this](const std::string& id) { show_patient(id); });
  find_->goes_down_to(*needs_);
  words_ = new WrappedLabel{this};
  auto* caution = new WrappedLabel{this, desk::HeldPage::caution()};
  auto* budget_row = make_budget_row(std::move(keep_to));
  refusal_ = new WrappedLabel{this};
  refusal_->SetFont(refusal_->GetFont().Bold());
  lines_summary_ = new WrappedLabel{this};
  lines_ =
      new TableView{this, page_.lines(), said("Order lines left out for the budget"), Pick::none};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(needs_summary_, inset);
  sizer->Add(needs_row, inset);
  sizer->Add(needs_, wxSizerFlags{3}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(words_, inset);
  sizer->Add(caution, inset);
  sizer->AddSpacer(FromDIP(8));
  sizer->Add(budget_row, inset);
  sizer->Add(refusal_, inset);
  sizer->Add(lines_summary_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(lines_, wxSizerFlags{2}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
  SetScrollRate(0, FromDIP(10));
  scroll_to_focus(*this);
  keep_wrapped(*this, {needs_summary_, words_, caution, refusal_, lines_summary_}, FromDIP(20));
}

wxSizer* HeldPane::make_needs_row() {
  find_ = new FindBox{this, said("Patient, part or reason"), said("Find a part held back"),
                      [this](const std::string& typed) {
                        page_.needs().find(typed);
                        needs_changed();
                      }};
  show_patient_ = new wxButton{this, wxID_ANY, said("Show pa&tient")};
  show_patient_->SetToolTip(said("Go to the patient of the chosen part (Enter in the list)"));
  show_patient_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { show_patient(needs_->selected()); });
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  row->Add(show_patient_, wxSizerFlags{}.CentreVertical());
  return row;
}

wxSizer* HeldPane::make_budget_row(std::function<void(const std::optional<Money>&)> keep_to) {
  budget_title_ = new wxStaticText{this, wxID_ANY, ""};
  budget_ =
      new wxTextCtrl{this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER};
  set_accessible_name(*budget_, said("Budget for today's orders"));
  budget_->SetToolTip(
      said("The most that the goods of today's orders may cost; empty for no limit"));
  keep_to_ = new wxButton{this, wxID_ANY, said("&Keep to it")};
  keep_to_->SetToolTip(
      said("Work today's orders out again within this budget (Enter in the field)"));
  const auto work = [this, keep_to = std::move(keep_to)](wxCommandEvent&) {
    if (!keep_to_->IsEnabled()) return;
    const auto budget = page_.read_budget(from_wx(budget_->GetValue().Strip(wxString::both)));
    refusal_->set_text(budget ? std::string{} : budget.error().sentence);
    FitInside();
    Layout();
    if (budget) keep_to(*budget);
  };
  budget_->Bind(wxEVT_TEXT_ENTER, work);
  keep_to_->Bind(wxEVT_BUTTON, work);
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(budget_title_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  row->Add(budget_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  row->Add(keep_to_, wxSizerFlags{}.CentreVertical());
  return row;
}

void HeldPane::show(const desk::DayPtr& day) {
  page_.show(day);
  budget_title_->SetLabel(
      to_wx(say("Bu&dget for today's orders, {}:", day->clinic().settings.currency.code)));
  budget_->ChangeValue(to_wx(page_.budget_text()));
  refusal_->set_text("");
  lines_summary_->set_text(page_.lines_summary());
  const auto lines = static_cast<int>(page_.lines().total());
  lines_->Show(lines > 0);
  lines_->set_least_rows(std::clamp(lines, 1, 3));
  lines_->table_changed();
  needs_changed();
  FitInside();
}

void HeldPane::needs_changed() {
  needs_summary_->set_text(page_.needs_summary());
  needs_->set_empty_words(page_.needs().total() == 0 ? said("Nothing is held back for a patient.")
                                                     : said("No part answers to what you typed."));
  needs_->table_changed();
  Layout();
}

void HeldPane::show_patient(const std::string& id) {
  if (const auto unit = page_.unit_of(id)) go_to_(*unit);
}

void HeldPane::allow_working(bool allowed) {
  keep_to_->Enable(allowed);
}

void HeldPane::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
