/// A pane of the chosen patient, which works its content out only when it is looked at.
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <wx/panel.h>

#include "desk/commands.hpp"
#include "desk/day.hpp"
#include "desk/patient_findings.hpp"

namespace sparewell::desktop {

/// Whom the panes show.
struct ChosenPatient {
  desk::DayPtr day;
  PatientRef patient;
  std::vector<desk::PatientFinding> findings;
};
using ChosenPatientPtr = std::shared_ptr<const ChosenPatient>;

/// What the panes call.
struct PaneActions {
  std::function<void(desk::Command)> run;  ///< starts a command
  std::function<void()> choice_changed;    ///< another part is chosen
};

class PatientPane : public wxPanel {
 public:
  using wxPanel::wxPanel;
  /// From now on about this patient; filled when it comes into sight.
  void about(ChosenPatientPtr chosen);
  /// Fills the pane if it has not been since about().
  void come_into_sight();
  virtual void allow_work(const desk::CommandState& state) = 0;
  /// The unit that commands work on, a position in Clinic::units; empty for none.
  [[nodiscard]] virtual std::optional<std::size_t> chosen_unit() const { return std::nullopt; }

 protected:
  virtual void fill(const ChosenPatient& chosen) = 0;

 private:
  ChosenPatientPtr chosen_;
  bool filled_ = true;
};

}  // namespace sparewell::desktop
