#include "desktop/pages/patient/findings_pane.hpp"

#include <wx/button.h>
#include <wx/sizer.h>

#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

FindingsPane::FindingsPane(wxWindow* parent, std::function<void(desk::Command)> run,
                           std::function<void()> choice_changed)
    : wxPanel{parent},
      choice_changed_{std::move(choice_changed)},
      table_{desk::finding_columns(desk::FindingsOf::patient)} {
  view_ = new TableView{this, table_, "Findings"};
  view_->set_empty_words("The checks found nothing to tell.");
  view_->when_selected([this](const std::string& id) { show_words(id); });
  words_ = new WrappedLabel{this};
  auto* buttons = new wxBoxSizer{wxHORIZONTAL};
  const auto add = [&](desk::Command command) {
    auto* button = command_button(this, command, run);
    buttons->Add(button, wxSizerFlags{}.Border(wxRIGHT, FromDIP(8)));
    return button;
  };
  others_ = add(desk::Command::other_items);
  decide_ = add(desk::Command::decide_part);
  note_ = add(desk::Command::note_sensitivity);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(words_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(buttons, wxSizerFlags{}.Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {words_}, FromDIP(20));
}

void FindingsPane::show(const desk::Day& day, std::vector<desk::PatientFinding> findings) {
  findings_ = std::move(findings);
  table_.fill(desk::finding_rows(day, findings_, desk::FindingsOf::patient));
  view_->table_changed();
  show_words(view_->selected());
}

const desk::PatientFinding* FindingsPane::chosen() const {
  const auto& id = view_->selected();
  return id.empty() ? nullptr : &findings_.at(std::stoul(id));
}

void FindingsPane::show_words(const std::string& id) {
  words_->set_text(id.empty() ? std::string{} : findings_.at(std::stoul(id)).finding.words);
  Layout();
  choice_changed_();
}

void FindingsPane::allow_work(const desk::CommandState& state) {
  others_->Enable(desk::command_spec(desk::Command::other_items).enabled(state));
  decide_->Enable(desk::command_spec(desk::Command::decide_part).enabled(state));
  note_->Enable(desk::command_spec(desk::Command::note_sensitivity).enabled(state));
}

void FindingsPane::focus_rows() {
  view_->focus_rows();
}

}  // namespace sparewell::desktop
