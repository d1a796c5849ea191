/// On the page "Patients": what holds the chosen patient's limbs on, drawn.
#pragma once

#include <optional>
#include <string>

#include "desk/limb_drawing/limb_chain.hpp"
#include "desktop/pages/patient/patient_pane.hpp"

namespace sparewell::desktop {

class ChartView;
class CommandRow;

class LimbsPane : public PatientPane {
 public:
  LimbsPane(wxWindow* parent, const PaneActions& actions);

  void allow_work(const desk::CommandState& state) override;
  [[nodiscard]] std::optional<std::size_t> chosen_unit() const override;
  /// The finding of the missing function that is chosen; nullptr when none is.
  [[nodiscard]] const desk::PatientFinding* chosen_missing() const;

 protected:
  void fill(const ChosenPatient& chosen) override;

 private:
  [[nodiscard]] const desk::ChainRow* chosen_row() const;

  std::vector<desk::SideChain> chains_;
  std::vector<desk::PatientFinding> missing_;
  ChartView* drawing_ = nullptr;
  CommandRow* commands_ = nullptr;
};

}  // namespace sparewell::desktop
