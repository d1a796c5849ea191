/// On the page "Patients": how the chosen patient's limbs change, and whether the sizes worn fit.
#pragma once

#include "desk/fit_form.hpp"
#include "desktop/pages/patient/patient_pane.hpp"

class wxChoice;

namespace sparewell::desktop {

class CommandRow;
class LimbView;

class MeasurementsPane : public PatientPane {
 public:
  MeasurementsPane(wxWindow* parent, const PaneActions& actions);

  void allow_work(const desk::CommandState& state) override;

 protected:
  void fill(const ChosenPatient& chosen) override;

 private:
  wxChoice* limb_ = nullptr;
  LimbView* view_ = nullptr;
  CommandRow* commands_ = nullptr;
};

}  // namespace sparewell::desktop
