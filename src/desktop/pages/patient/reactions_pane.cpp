#include "desktop/pages/patient/reactions_pane.hpp"

#include <wx/sizer.h>

#include "desktop/widgets/command_row.hpp"
#include "desktop/widgets/reactions_box.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

ReactionsPane::ReactionsPane(wxWindow* parent, const PaneActions& actions) : PatientPane{parent} {
  intro_ = new WrappedLabel{this};
  box_ = new ReactionsBox{this, 5, 11};
  commands_ = new CommandRow{
      this, {desk::Command::record_reaction, desk::Command::reaction_healed}, actions.run};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(intro_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(box_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(commands_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {intro_}, FromDIP(20));
}

void ReactionsPane::fill(const ChosenPatient& chosen) {
  const auto view = desk::reactions_view(*chosen.day, chosen.patient);
  intro_->set_text(view.intro);
  box_->show(view);
}

void ReactionsPane::allow_work(const desk::CommandState& state) {
  commands_->allow_work(state);
}

}  // namespace sparewell::desktop
