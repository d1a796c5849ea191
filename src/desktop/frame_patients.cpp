#include <fmt/format.h>
#include <wx/filedlg.h>
#include <wx/msgdlg.h>
#include <wx/stdpaths.h>

#include "desk/booking_form.hpp"
#include "desk/issue_jobs.hpp"
#include "desktop/dialogs/booking_dialog.hpp"
#include "desktop/dialogs/issue_dialogs.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::issue_part() {
  const auto patient = patients_->chosen_patient();
  IssueDialog dialog{
      this, patient, desk::patient_words(*day_, {patient}),
      [this](const desk::IssueRequest& request) { return desk::ask_whether(file_, request); },
      [this](const desk::IssueRequest& request) { return desk::hand_over(file_, request); }};
  if (dialog.ShowModal() != wxID_OK || dialog.units().empty()) return;
  note_->say("The part is handed over and recorded.", {});
  write_sheet(dialog.units());
  read_again();
}

void MainFrame::write_sheet(const std::vector<Unit>& units) {
  const auto& unit = units.front();
  wxFileDialog ask{
      this,
      "Write the delivery sheet, for the patient's signature",
      wxStandardPaths::Get().GetDocumentsDir(),
      to_wx(fmt::format("delivery {} {}.pdf", unit.patient.text, iso_text(unit.issued_on))),
      "PDF files (*.pdf)|*.pdf",
      wxFD_SAVE | wxFD_OVERWRITE_PROMPT};
  if (ask.ShowModal() != wxID_OK) return;
  const auto path = from_wx(ask.GetPath());
  const auto pages = desk::write_delivery_sheet(file_, units, path);
  note_->say(pages ? fmt::format("The delivery sheet was written: {}", path)
                   : "The part is recorded as handed over. " + pages.error().sentence,
             {});
}

void MainFrame::end_part() {
  const auto* unit = patients_->chosen_unit();
  if (unit == nullptr) return;
  const desk::UnitChoice choice{unit->patient.text, unit->side, unit->item.text, unit->lot,
                                unit->serial};
  EndPartDialog dialog{
      this, choice, fmt::format("{} {}, {}", unit->patient.text, word(unit->side), unit->item.text),
      day_->today(), [this](const desk::UnitEnding& ending) -> std::string {
        const auto ended = desk::end_part(file_, ending);
        return ended ? "" : ended.error().sentence;
      }};
  if (dialog.ShowModal() != wxID_OK) return;
  note_->say("The part is recorded as ended.", {});
  read_again();
}

void MainFrame::book_parts() {
  const auto patient = patients_->chosen_patient();
  BookingDialog dialog{this, desk::booking_form(*day_, {patient}), patient, file_};
  if (dialog.ShowModal() != wxID_OK) return;
  note_->say(dialog.said(), {});
  read_again();
}

void MainFrame::cancel_booking() {
  const auto form = desk::cancel_form(*day_, {patients_->chosen_patient()});
  if (form) return book(*form);
  note_->say(form.error().sentence, {});
}

}  // namespace sparewell::desktop
