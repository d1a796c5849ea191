/// On the page "Patients": everything that happened to the chosen patient.
#pragma once

#include "desk/patient_history.hpp"
#include "desktop/pages/patient/patient_pane.hpp"

class wxChoice;
class wxStaticText;

namespace sparewell::desktop {

class TableView;

class HistoryPane : public PatientPane {
 public:
  HistoryPane(wxWindow* parent, const PaneActions& actions);

  void allow_work(const desk::CommandState& /*state*/) override {}

 protected:
  void fill(const ChosenPatient& chosen) override;

 private:
  void show_rows();

  std::vector<desk::HistoryEntry> history_;
  desk::Table table_;
  wxChoice* kind_ = nullptr;
  wxStaticText* count_ = nullptr;
  TableView* view_ = nullptr;
};

}  // namespace sparewell::desktop
