#include "desktop/pages/patient/limbs_pane.hpp"

#include <algorithm>

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/limb_drawing/chain_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/widgets/command_row.hpp"

namespace sparewell::desktop {

LimbsPane::LimbsPane(wxWindow* parent, const PaneActions& actions) : PatientPane{parent} {
  drawing_ = new ChartView{this, say("What holds the limbs on, drawn")};
  drawing_->set_least_height(12);
  drawing_->when_selected([changed = actions.choice_changed](const std::string&) { changed(); });
  using desk::Command;
  commands_ = new CommandRow{
      this,
      {Command::issue_part, Command::end_part, Command::other_items, Command::book_parts},
      actions.run};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(drawing_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(commands_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  SetSizer(sizer);
}

void LimbsPane::fill(const ChosenPatient& chosen) {
  chains_ = desk::limb_chains(*chosen.day, chosen.patient, chosen.findings);
  missing_.clear();
  std::ranges::copy_if(chosen.findings, std::back_inserter(missing_),
                       [](const auto& each) { return each.missing.has_value(); });
  drawing_->show(desk::chain_picture(chains_, chosen.patient.text, chosen.day->today()));
  if (chosen_row() != nullptr) return;
  for (const auto& chain : chains_) {
    if (!chain.rows.empty()) return drawing_->mark(chain.rows.front().id);
  }
}

const desk::ChainRow* LimbsPane::chosen_row() const {
  for (const auto& chain : chains_) {
    for (const auto& row : chain.rows) {
      if (row.id == drawing_->selected()) return &row;
    }
  }
  return nullptr;
}

std::optional<std::size_t> LimbsPane::chosen_unit() const {
  const auto* row = chosen_row();
  return row != nullptr ? row->unit : std::nullopt;
}

const desk::PatientFinding* LimbsPane::chosen_missing() const {
  const auto* row = chosen_row();
  if (row == nullptr || !row->missing()) return nullptr;
  for (const auto& each : missing_) {
    if (desk::missing_id(each) == row->id) return &each;
  }
  return nullptr;
}

void LimbsPane::allow_work(const desk::CommandState& state) {
  commands_->allow_work(state);
}

}  // namespace sparewell::desktop
