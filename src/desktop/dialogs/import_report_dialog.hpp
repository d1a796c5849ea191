/// Says what an import took and what it refused, or would.
#pragma once

#include "desk/import_trial.hpp"
#include "desk/report_words.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class ImportReportDialog : public Form {
 public:
  ImportReportDialog(wxWindow* parent, const desk::ImportReport& report);
  /// Says what it would take; ends with wxID_OK when that is to be done.
  ImportReportDialog(wxWindow* parent, const desk::ImportTrial& trial);

 private:
  void add_lists(const desk::ImportReport& report);

  desk::Table files_;
  desk::Table refusals_;
};

}  // namespace sparewell::desktop
