#include "clinic/say.hpp"
#include "desk/alternative_parts.hpp"
#include "desk/part_words.hpp"
#include "desk/sensitivity_forms.hpp"
#include "desktop/dialogs/alternatives_dialog.hpp"
#include "desktop/dialogs/findings_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::show_findings() {
  go_to(*patients_);
  patients_->show_findings();
}

void MainFrame::show_everyones_findings() {
  auto found =
      aside([day = day_] { return desk::findings_of_everyone(day->clinic(), day->today()); });
  FindingsDialog dialog{this, *day_, std::move(found)};
  if (dialog.ShowModal() != wxID_OK) return;
  go_to(*patients_);
  patients_->choose(dialog.chosen());
  patients_->show_findings();
}

void MainFrame::show_other_items() {
  const auto question = patients_->question_of_others();
  if (!question) return;
  auto found = aside(
      [day = day_, &question] { return desk::find_alternatives(day->assessment(), *question); });
  if (!found) return note_->say(found.error().sentence, {});
  const auto* item = day_->index().item(question->item);
  const auto instead = item != nullptr ? say("instead of {}", desk::item_words(*item))
                                       : say("as {}", shown_word(*question->function));
  AlternativesDialog{
      this,
      say("{}, {} side, {}. What suits comes before what has to be asked about.",
          desk::patient_words(*day_, question->patient), shown_word(question->side), instead),
      std::move(*found)}
      .ShowModal();
}

void MainFrame::decide_part() {
  if (const auto* finding = patients_->chosen_finding()) book(desk::decision_form(*day_, *finding));
}

void MainFrame::note_sensitivity() {
  book(desk::sensitivity_form(*day_, {patients_->chosen_patient()}));
}

void MainFrame::change_constituents() {
  book(desk::constituents_form(*day_, {shelf_->chosen_item()}));
}

}  // namespace sparewell::desktop
