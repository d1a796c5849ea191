// Papers for patients and for visits.
#include <fmt/format.h>
#include <wx/msgdlg.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desk/papers/parts_list.hpp"
#include "desktop/dialogs/paper_dialogs.hpp"
#include "desktop/dialogs/save_workbook.hpp"
#include "desktop/dialogs/travel_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::say_paper(const std::string& file) {
  note_->say(say("Written to {}.", file),
             {{said("Open &paper"), [file] { wxLaunchDefaultApplication(to_wx(file)); }}});
}

void MainFrame::check_trip() {
  const auto patient = patients_->chosen_patient();
  const auto card = [&](wxWindow* parent, const desk::TravelAnswers& answers) -> std::string {
    if (auto refusal = desk::card_refusal(*day_, patient, answers); !refusal.empty()) {
      return refusal;
    }
    PaperDialog dialog{parent, said("Travel card"), desk::translation_caution()};
    if (dialog.ShowModal() != wxID_OK) return {};
    const auto path = ask_for_pdf(parent, said("Write the travel card"),
                                  desk::travel_card_file(patient, answers));
    if (path.empty()) return {};
    const auto pages = aside([day = day_, &patient, &answers, how = dialog.how(), &path] {
      return desk::write_travel_card(*day, patient, answers, how, path);
    });
    if (!pages) return pages.error().sentence;
    say_paper(path);
    return say("The travel card was written to {}.", path);
  };
  std::vector<std::string> lent;
  const auto lend = [&](const desk::TravelAnswers& answers) -> std::string {
    try {
      const auto booked = aside([file = file_, day = day_, &patient, &answers] {
        return desk::lend_for_trip(file, *day, patient, answers);
      });
      if (!booked) return booked.error().sentence;
      lent = booked->notes;
      return {};
    } catch (...) {
      return desk::describe_failure(std::current_exception());
    }
  };
  TravelDialog dialog{this,
                      desk::travel_introduction(*day_, {patient}),
                      [day = day_, patient](const desk::TravelAnswers& answers) {
                        return desk::travel_text(*day, patient, answers);
                      },
                      card,
                      {[this, patient](const desk::TravelAnswers& answers) {
                         return desk::lending_question(*day_, patient, answers);
                       },
                       lend}};
  if (dialog.ShowModal() != wxID_OK) return;
  note_->say(say("Lent: {}", fmt::join(lent, " ")), {});
  read_again();
}

void MainFrame::write_parts_list() {
  const auto patient = patients_->chosen_patient();
  PaperDialog dialog{this, said("Parts list"),
                     say("The parts that {} has in use, how long they may last, and their care. {}",
                         patient, desk::translation_caution())};
  if (dialog.ShowModal() != wxID_OK) return;
  const auto path = ask_for_pdf(this, said("Write the parts list"),
                                say("parts {} {}", patient, iso_text(file_.today)));
  if (path.empty()) return;
  const auto pages = aside([day = day_, &patient, how = dialog.how(), &path] {
    return desk::print_parts_list(*day, {patient}, how, path);
  });
  if (pages) return say_paper(path);
  note_->say(pages.error().sentence, {});
}

void MainFrame::prepare_visits() {
  VisitDialog dialog{this, file_.today + days{1},
                     [this](const std::string& day) { return desk::visits_known(*day_, day); }};
  if (dialog.ShowModal() != wxID_OK) return;
  const auto on = desk::read_visit_day(dialog.day());
  if (!on) return note_->say(on.error().sentence, {});
  if (desk::patients_expected(*day_, *on).empty())
    return note_->say(desk::no_visit_words(*day_, *on), {});
  const auto path =
      ask_for_pdf(this, said("Write the visit sheets"), say("visits {}", iso_text(*on)));
  if (path.empty()) return;
  auto pages = std::make_shared<Expected<int>>();
  start_job({said("Preparing the visits"), false,
             [day = day_, on = *on, how = dialog.how(), path, pages](const desk::JobControl&) {
               *pages = desk::print_visits(*day, desk::visit_day(*day, on), how, path);
             },
             [this, path, pages](const desk::JobEnd& end) {
               if (say_failure(end)) return;
               if (*pages) return say_paper(path);
               note_->say(pages->error().sentence, {});
             }});
}

}  // namespace sparewell::desktop
