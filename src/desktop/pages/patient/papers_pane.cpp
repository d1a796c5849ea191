#include "desktop/pages/patient/papers_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/patient_paper_rows.hpp"
#include "desktop/widgets/command_row.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

PapersPane::PapersPane(wxWindow* parent, const PaneActions& actions)
    : PatientPane{parent}, papers_{desk::paper_columns()} {
  summary_ = new WrappedLabel{this};
  view_ = new TableView{this, papers_, said("Papers of the parts")};
  view_->set_empty_words(said("No part was issued."));
  view_->when_selected([changed = actions.choice_changed](const std::string&) { changed(); });
  using desk::Command;
  commands_ = new CommandRow{
      this,
      {Command::note_paper, Command::sheet_again, Command::sheet_signed, Command::parts_list},
      actions.run};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(summary_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(commands_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {summary_}, FromDIP(20));
}

void PapersPane::fill(const ChosenPatient& chosen) {
  summary_->set_text(desk::papers_summary(*chosen.day, chosen.patient));
  papers_.fill(desk::paper_rows(*chosen.day, chosen.patient));
  view_->table_changed();
}

std::optional<std::size_t> PapersPane::chosen_unit() const {
  const auto& id = view_->selected();
  return id.empty() ? std::nullopt : std::optional<std::size_t>{std::stoul(id)};
}

void PapersPane::allow_work(const desk::CommandState& state) {
  commands_->allow_work(state);
}

}  // namespace sparewell::desktop
