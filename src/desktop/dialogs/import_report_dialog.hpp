/// Says what an import took and what it refused.
#pragma once

#include "desk/report_words.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class ImportReportDialog : public Form {
 public:
  ImportReportDialog(wxWindow* parent, const desk::ImportReport& report);

 private:
  desk::Table files_;
  desk::Table refusals_;
};

}  // namespace sparewell::desktop
