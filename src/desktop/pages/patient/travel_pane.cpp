#include "desktop/pages/patient/travel_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/patient_travel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/command_row.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/told_text.hpp"

namespace sparewell::desktop {

TravelPane::TravelPane(wxWindow* parent, const PaneActions& actions)
    : PatientPane{parent}, lent_{desk::lent_columns()} {
  told_ = told_text(this, said("What the trip check says"), 6);
  view_ = new TableView{this, lent_, said("Lent to the patient"), Pick::none};
  view_->set_least_rows(2);
  view_->set_empty_words(said("Nothing was lent to the patient."));
  commands_ = new CommandRow{this, {desk::Command::check_trip}, actions.run};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(told_, wxSizerFlags{3}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(commands_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(section_heading(this, said("Lent")), wxSizerFlags{}.Border(wxLEFT, FromDIP(8)));
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
}

void TravelPane::fill(const ChosenPatient& chosen) {
  told_->ChangeValue(to_wx(desk::travel_outlook(*chosen.day, chosen.patient)));
  lent_.fill(desk::lent_rows(*chosen.day, chosen.patient));
  view_->table_changed();
}

void TravelPane::allow_work(const desk::CommandState& state) {
  commands_->allow_work(state);
}

}  // namespace sparewell::desktop
