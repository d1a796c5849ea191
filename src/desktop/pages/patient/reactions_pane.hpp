/// On the page "Patients": the chosen patient's skin reactions, and what they speak for.
#pragma once

#include "desktop/pages/patient/patient_pane.hpp"

namespace sparewell::desktop {

class CommandRow;
class ReactionsBox;
class WrappedLabel;

class ReactionsPane : public PatientPane {
 public:
  ReactionsPane(wxWindow* parent, const PaneActions& actions);

  void allow_work(const desk::CommandState& state) override;

 protected:
  void fill(const ChosenPatient& chosen) override;

 private:
  WrappedLabel* intro_ = nullptr;
  ReactionsBox* box_ = nullptr;
  CommandRow* commands_ = nullptr;
};

}  // namespace sparewell::desktop
