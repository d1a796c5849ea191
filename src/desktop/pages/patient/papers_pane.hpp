/// On the page "Patients": the papers of the chosen patient's parts.
#pragma once

#include "desk/table.hpp"
#include "desktop/pages/patient/patient_pane.hpp"

namespace sparewell::desktop {

class CommandRow;
class TableView;
class WrappedLabel;

class PapersPane : public PatientPane {
 public:
  PapersPane(wxWindow* parent, const PaneActions& actions);

  void allow_work(const desk::CommandState& state) override;
  [[nodiscard]] std::optional<std::size_t> chosen_unit() const override;

 protected:
  void fill(const ChosenPatient& chosen) override;

 private:
  desk::Table papers_;
  WrappedLabel* summary_ = nullptr;
  TableView* view_ = nullptr;
  CommandRow* commands_ = nullptr;
};

}  // namespace sparewell::desktop
