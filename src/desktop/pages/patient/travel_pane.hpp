/// On the page "Patients": whether the chosen patient could go away, and what is lent.
#pragma once

#include "desk/table.hpp"
#include "desktop/pages/patient/patient_pane.hpp"

class wxTextCtrl;

namespace sparewell::desktop {

class CommandRow;
class TableView;

class TravelPane : public PatientPane {
 public:
  TravelPane(wxWindow* parent, const PaneActions& actions);

  void allow_work(const desk::CommandState& state) override;

 protected:
  void fill(const ChosenPatient& chosen) override;

 private:
  desk::Table lent_;
  wxTextCtrl* told_ = nullptr;
  TableView* view_ = nullptr;
  CommandRow* commands_ = nullptr;
};

}  // namespace sparewell::desktop
