#include "desktop/dialogs/import_report_dialog.hpp"

#include <wx/button.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

ImportReportDialog::ImportReportDialog(wxWindow* parent, const desk::ImportReport& report)
    : Form{parent, said("What was imported"), desk::import_summary(report)},
      files_{desk::import_files(report)},
      refusals_{desk::import_refusals(report)} {
  add_lists(report);
  finish(said("&Close"), false);
}

ImportReportDialog::ImportReportDialog(wxWindow* parent, const desk::ImportTrial& trial)
    : Form{parent, say("Dry run: what would be imported"), desk::trial_summary(trial)},
      files_{desk::import_files(trial.report)},
      refusals_{desk::import_refusals(trial.report)} {
  add_lists(trial.report);
  finish(said("&Import it now"));
}

void ImportReportDialog::add_lists(const desk::ImportReport& report) {
  auto* files = new TableView{this, files_, said("Files")};
  files->set_least_rows(6);
  files->SetMinSize({FromDIP(760), -1});
  add_wide(files, 1);
  files->table_changed();
  if (refusals_.total() > 0) {
    add_wide(section_heading(this, said("Refused rows")), 0);
    auto* refusals = new TableView{this, refusals_, said("Refused rows")};
    refusals->set_least_rows(6);
    add_wide(refusals, 1);
    refusals->table_changed();
  }
  if (!report.rejects_folder.empty()) {
    auto* open = new wxButton{this, wxID_ANY, said("&Open the folder of refused rows")};
    open->Bind(wxEVT_BUTTON, [folder = report.rejects_folder](wxCommandEvent&) {
      wxLaunchDefaultApplication(to_wx(folder.string()));
    });
    add_wide(open, 0);
  }
}

}  // namespace sparewell::desktop
