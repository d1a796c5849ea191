#include "desktop/pages/patient/findings_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/widgets/command_row.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

FindingsPane::FindingsPane(wxWindow* parent, const std::function<void(desk::Command)>& run,
                           std::function<void()> choice_changed)
    : wxPanel{parent},
      choice_changed_{std::move(choice_changed)},
      table_{desk::finding_columns(desk::FindingsOf::patient)} {
  view_ = new TableView{this, table_, said("Findings")};
  view_->set_empty_words(said("The checks found nothing to tell."));
  view_->when_selected([this](const std::string& id) { show_words(id); });
  words_ = new WrappedLabel{this};
  using desk::Command;
  commands_ = new CommandRow{
      this, {Command::other_items, Command::decide_part, Command::note_sensitivity}, run};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(words_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(commands_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
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
  commands_->allow_work(state);
}

void FindingsPane::focus_rows() {
  view_->focus_rows();
}

}  // namespace sparewell::desktop
