#include <fmt/format.h>
#include <wx/filedlg.h>
#include <wx/msgdlg.h>
#include <wx/stdpaths.h>

#include "clinic/say.hpp"
#include "desk/booking_form.hpp"
#include "desk/issue_jobs.hpp"
#include "desk/wording.hpp"
#include "desktop/dialogs/booking_dialog.hpp"
#include "desktop/dialogs/issue_dialogs.hpp"
#include "desktop/dialogs/order_dialogs.hpp"
#include "desktop/dialogs/reactions_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::issue_part() {
  const auto patient = patients_->chosen_patient();
  IssueDialog dialog{this,
                     patient,
                     desk::patient_words(*day_, {patient}),
                     file_.path,
                     [file = file_, day = day_](const desk::IssueRequest& request) {
                       return desk::ask_whether(file, day, request);
                     },
                     [this](const desk::IssueRequest& request) {
                       return aside([file = file_, day = day_, &request] {
                         return desk::hand_over(file, day, request);
                       });
                     }};
  if (dialog.ShowModal() != wxID_OK || dialog.units().empty()) return;
  note_done(desk::undo_issue(dialog.units()), "");
  say_done(said("The part is handed over and recorded."));
  write_sheet(dialog.units());
  read_again();
}

std::string MainFrame::ask_sheet_file(const Unit& unit, const std::string& title) {
  wxFileDialog ask{this,
                   to_wx(title),
                   wxStandardPaths::Get().GetDocumentsDir(),
                   to_wx(say("delivery {} {}.pdf", unit.patient.text, iso_text(unit.issued_on))),
                   said("PDF files (*.pdf)|*.pdf"),
                   wxFD_SAVE | wxFD_OVERWRITE_PROMPT};
  return ask.ShowModal() == wxID_OK ? from_wx(ask.GetPath()) : std::string{};
}

void MainFrame::write_sheet(const std::vector<Unit>& units) {
  const auto path =
      ask_sheet_file(units.front(), said("Write the delivery sheet, for the patient's signature"));
  if (path.empty()) return;
  const auto pages = aside(
      [file = file_, &units, &path] { return desk::write_delivery_sheet(file, units, path); });
  note_->say(pages ? say("The delivery sheet was written: {}", path)
                   : say("The part is recorded as handed over. {}", pages.error().sentence),
             {});
}

void MainFrame::write_sheet_again() {
  const auto* unit = patients_->chosen_part();
  if (unit == nullptr) return;
  const auto path = ask_sheet_file(
      *unit, say("Write the delivery sheet of {} again", desk::date_words(unit->issued_on)));
  if (path.empty()) return;
  const auto pages = aside(
      [file = file_, part = *unit, &path] { return desk::write_sheet_again(file, part, path); });
  note_->say(pages ? say("The delivery sheet was written: {}", path) : pages.error().sentence, {});
}

void MainFrame::record_signature() {
  const auto* unit = patients_->chosen_part();
  if (unit == nullptr) return;
  SentenceDialog dialog{
      this,
      {said("Signed delivery sheet"),
       say("Everything that was handed to {} on {} counts as signed for.", unit->patient.text,
           desk::date_words(unit->issued_on)),
       said("&Signed on"), said("The day on the sheet, such as 2026-11-25"), said("&Record")},
      [&](const std::string& day) -> std::string {
        const auto signed_for = aside(
            [file = file_, part = *unit, &day] { return desk::record_signature(file, part, day); });
        if (!signed_for) return signed_for.error().sentence;
        note_->say(say("The signed sheet is recorded for {}.",
                       desk::count_words(*signed_for, "piece", "pieces")),
                   {});
        return {};
      }};
  if (dialog.ShowModal() == wxID_OK) read_again();
}

void MainFrame::end_part() {
  const auto* unit = patients_->chosen_unit();
  if (unit == nullptr) return;
  const desk::UnitChoice choice{unit->patient.text, unit->side, unit->item.text, unit->lot,
                                unit->serial};
  std::optional<desk::UndoStep> step;
  EndPartDialog dialog{
      this,
      choice,
      fmt::format("{} {}, {}", unit->patient.text, shown_word(unit->side), unit->item.text),
      day_->today(),
      file_.path,
      [&](const desk::UnitEnding& ending) -> std::string {
        const auto ended = aside([file = file_, &ending] { return desk::end_part(file, ending); });
        if (ended) step = desk::undo_ending(ending, *ended);
        return ended ? "" : ended.error().sentence;
      }};
  if (dialog.ShowModal() != wxID_OK) return;
  note_done(std::move(step), say("a mistaken issue was taken back"));
  say_done(said("The part is recorded as ended."));
  read_again();
}

void MainFrame::book_parts() {
  const auto patient = patients_->chosen_patient();
  const auto before = visit_bookings();
  BookingDialog dialog{this, desk::booking_form(*day_, {patient}), patient, file_};
  if (dialog.ShowModal() != wxID_OK) return;
  note_done(desk::undo_bookings(before, visit_bookings()), "");
  say_done(dialog.news());
  read_again();
}

void MainFrame::record_healed() {
  const auto form = desk::healed_form(*day_, {patients_->chosen_patient()});
  if (form) return book(*form);
  note_->say(form.error().sentence, {});
}

void MainFrame::show_reactions() {
  ReactionsDialog{this, desk::reactions_view(*day_, {patients_->chosen_patient()})}.ShowModal();
}

void MainFrame::cancel_booking() {
  const auto form = desk::cancel_form(*day_, {patients_->chosen_patient()});
  if (form) return book(*form);
  note_->say(form.error().sentence, {});
}

}  // namespace sparewell::desktop
