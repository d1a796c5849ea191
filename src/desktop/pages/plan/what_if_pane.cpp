#include "desktop/pages/plan/what_if_pane.hpp"

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/spinctrl.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desk/commands.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/scroll_to_focus.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

WhatIfPane::WhatIfPane(wxWindow* parent, std::function<void()> compare) : wxScrolledWindow{parent} {
  auto* questions = make_questions(std::move(compare));
  result_ = new wxBoxSizer{wxVERTICAL};
  risks_ = new WrappedLabel{this};
  note_ = new WrappedLabel{this, desk::what_if_note()};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(questions, inset);
  sizer->Add(result_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(risks_, inset);
  sizer->Add(note_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
  SetScrollRate(0, FromDIP(10));
  scroll_to_focus(*this);
  keep_wrapped(*this, {risks_, note_}, FromDIP(20));
}

wxSizer* WhatIfPane::make_questions(std::function<void()> compare) {
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  const auto add = [&](const char* label, auto make, const char* name) {
    row->Add(new wxStaticText{this, wxID_ANY, label},
             wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(6)));
    auto* control = make();
    set_accessible_name(*control, name);
    row->Add(control, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(16)));
    return control;
  };
  const auto number = [this](int least, int most, int value) {
    return new wxSpinCtrl{this,
                          wxID_ANY,
                          wxString::Format("%d", value),
                          wxDefaultPosition,
                          wxDefaultSize,
                          wxSP_ARROW_KEYS,
                          least,
                          most,
                          value};
  };
  wait_ = add(
      said("Wa&it, days:"), [&] { return number(1, 365, 7); }, said("Wait, days"));
  target_ = add(
      said("Another &target, %:"), [&] { return number(50, 99, 90); }, said("Another target, %"));
  without_ = add(
      said("&Lost supplier:"),
      [&] {
        return new wxChoice{this, wxID_ANY};
      },
      said("Lost supplier"));
  const auto& spec = desk::command_spec(desk::Command::compare_decisions);
  compare_ = new wxButton{this, wxID_ANY, said("Co&mpare")};
  compare_->SetToolTip(to_wx(tooltip_words(spec)));
  compare_->Bind(wxEVT_BUTTON, [compare = std::move(compare)](wxCommandEvent&) { compare(); });
  row->AddStretchSpacer(1);
  row->Add(compare_, wxSizerFlags{}.CentreVertical());
  return row;
}

void WhatIfPane::show(const desk::DayPtr& day) {
  show_compared({});
  suppliers_.clear();
  without_->Clear();
  without_->Append(said("none"));
  if (day) {
    for (const Supplier& supplier : day->clinic().suppliers) {
      suppliers_.push_back(supplier.name);
      without_->Append(to_wx(supplier.name.text));
    }
  }
  without_->SetSelection(suppliers_.empty() ? 0 : 1);
  Layout();
}

void WhatIfPane::show_compared(const std::vector<desk::Compared>& compared) {
  result_->Clear(true);
  rows_ = nullptr;
  table_.reset();
  std::string risks = compared.empty() ? desk::what_if_introduction() : std::string{};
  if (!compared.empty()) {
    table_.emplace(desk::what_if_table(compared));
    rows_ = new TableView{this, *table_, said("Decisions side by side"), Pick::none};
    rows_->set_least_rows(8);
    rows_->table_changed();
    result_->Add(rows_, wxSizerFlags{1}.Expand());
    // So that the Tab key comes to it after what was asked.
    rows_->MoveAfterInTabOrder(compare_);
  }
  for (const auto& each : compared) {
    const auto sentences = desk::risk_sentences(each);
    if (sentences.empty()) continue;
    risks += (risks.empty() ? "" : "\n\n") + each.decision.title;
    for (const auto& sentence : sentences) risks += "\n" + sentence;
  }
  risks_->set_text(risks);
  FitInside();
  Layout();
}

void WhatIfPane::allow_comparing(bool allowed) {
  compare_->Enable(allowed);
}

desk::WhatIfQuestions WhatIfPane::questions() const {
  desk::WhatIfQuestions asked{{wait_->GetValue()}, {target_->GetValue() / 100.0}, {}};
  const int chosen = without_->GetSelection();
  if (chosen > 0) asked.without = {suppliers_[static_cast<std::size_t>(chosen) - 1]};
  return asked;
}

void WhatIfPane::focus_rows() {
  if (rows_ != nullptr) rows_->focus_rows();
}

}  // namespace sparewell::desktop
