/// What the checks find about everyone's parts.
#pragma once

#include <functional>
#include <vector>

#include "desk/finding_rows.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class TableView;

class FindingsDialog : public Form {
 public:
  FindingsDialog(wxWindow* parent, const desk::Day& day,
                 std::vector<desk::PatientFinding> findings);

  /// The patient that was gone to; "" when the dialog was closed.
  [[nodiscard]] const PatientRef& chosen() const { return chosen_; }

 private:
  void show_words(const std::string& id);
  void choose(const std::string& id);

  std::vector<desk::PatientFinding> findings_;
  desk::Table table_;
  wxTextCtrl* find_ = nullptr;
  TableView* view_ = nullptr;
  wxTextCtrl* words_ = nullptr;
  PatientRef chosen_;
};

}  // namespace sparewell::desktop
