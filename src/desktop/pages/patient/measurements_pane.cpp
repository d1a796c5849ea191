#include "desktop/pages/patient/measurements_pane.hpp"

#include <wx/choice.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_row.hpp"
#include "desktop/widgets/limb_view.hpp"

namespace sparewell::desktop {

MeasurementsPane::MeasurementsPane(wxWindow* parent, const PaneActions& actions)
    : PatientPane{parent} {
  limb_ = new wxChoice{this, wxID_ANY};
  set_accessible_name(*limb_, said("Limb and height"));
  limb_->SetToolTip(to_wx(said("Side and height of the drawing")));
  limb_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) { view_->choose(event.GetSelection()); });
  view_ = new LimbView{this, 5};
  commands_ = new CommandRow{
      this, {desk::Command::record_measurement, desk::Command::show_fit}, actions.run};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(limb_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(commands_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  SetSizer(sizer);
}

void MeasurementsPane::fill(const ChosenPatient& chosen) {
  const auto shown = desk::show_fit(*chosen.day, chosen.patient, desk::fit_first_day(*chosen.day));
  const auto before = limb_->GetStringSelection();
  limb_->Clear();
  for (const auto& name : desk::limb_names(shown)) limb_->Append(to_wx(name));
  if (before.empty() || !limb_->SetStringSelection(before)) limb_->SetSelection(0);
  view_->show(shown);
  view_->choose(limb_->GetSelection());
}

void MeasurementsPane::allow_work(const desk::CommandState& state) {
  commands_->allow_work(state);
}

}  // namespace sparewell::desktop
