#include <fmt/format.h>
#include <fmt/ranges.h>
#include <wx/dirdlg.h>
#include <wx/filedlg.h>
#include <wx/msgdlg.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desk/billing/answering.hpp"
#include "desk/billing/billing_jobs.hpp"
#include "desk/billing/books.hpp"
#include "desk/billing/claim_file_words.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/billing/payer_rules.hpp"
#include "desk/billing/reports.hpp"
#include "desk/stock_words.hpp"
#include "desktop/dialogs/claim_file_dialog.hpp"
#include "desktop/dialogs/lines_dialog.hpp"
#include "desktop/dialogs/rules_dialog.hpp"
#include "desktop/dialogs/stock_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/today_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::go_to_billing() {
  go_to(*billing_);
}

void MainFrame::compare_books() {
  auto items = std::make_shared<desk::WorklistPtr>();
  today_->show_books(desk::TodayPage::Books::comparing, nullptr);
  start_job(
      {said("Comparing the books"), false,
       [day = day_, items](const desk::JobControl&) { *items = desk::compare_books_of(*day); },
       [this, day = day_, items](const desk::JobEnd& end) {
         const bool failed = say_failure(end);
         if (!failed && day == day_) books_ = *items;
         tell_today_of_books();
         if (failed || day != day_) return;
         billing_->show_books(books_);
         go_where_books_lead();
       }});
}

void MainFrame::answer_finding() {
  const auto* item = billing_->chosen();
  if (item == nullptr) return;
  StockDialog dialog{this, desk::answer_form(*day_, *item), file_};
  if (dialog.ShowModal() != wxID_OK) return;
  auto step = aside([file = file_, key = item->finding.key] {
    return desk::undo_answer(*desk::open_store(file)->read(), key);
  });
  note_done(std::move(step), "");
  say_done(fmt::format("{}", fmt::join(desk::booked_lines(dialog.booked()), "\n")));
  // Nothing but the answers has changed, so the books need not be compared again.
  books_ = aside([file = file_, books = books_] { return desk::with_answers(file, books); });
  billing_->show_books(books_);
  tell_today_of_books();
  update_commands();
}

void MainFrame::go_to_finding_patient() {
  const auto* item = billing_->chosen();
  if (item == nullptr || item->finding.patient.empty()) return;
  const auto& units = item->finding.evidence.units;
  if (!units.empty()) return go_to_unit(units.back());
  const auto patient = item->finding.patient;
  go_to(*patients_);
  patients_->choose(patient);
}

const Unit* MainFrame::unit_for_paper() const {
  if (current_page() == patients_) return patients_->chosen_part();
  if (current_page() != billing_) return nullptr;
  const auto* item = billing_->chosen();
  if (item == nullptr || item->finding.evidence.units.empty()) return nullptr;
  // The last one is the newest.
  return &day_->clinic().units.at(item->finding.evidence.units.back());
}

void MainFrame::note_paper() {
  const Unit* unit = unit_for_paper();
  if (unit == nullptr) return;
  std::string paper;
  if (current_page() == billing_ &&
      billing_->chosen()->finding.kind == billing::FindingKind::paper_missing) {
    paper = billing_->chosen()->finding.other;
  }
  book(desk::paper_form(*day_, *unit, paper));
}

void MainFrame::read_billing_file(desk::BillingFileKind kind) {
  const bool claims = kind == desk::BillingFileKind::claims;
  wxFileDialog choose{
      this,
      claims ? said("Read claims") : said("Read payments"),
      "",
      "",
      claims ? said("Claims (*.837;*.x12;*.txt;*.csv;*.xlsx)|*.837;*.x12;*.txt;*.csv;"
                    "*.xlsx|All files|*")
             : said("Payments (*.835;*.x12;*.txt;*.csv;*.xlsx)|*.835;*.x12;*.txt;*.csv;"
                    "*.xlsx|All files|*"),
      wxFD_OPEN | wxFD_FILE_MUST_EXIST};
  if (choose.ShowModal() != wxID_OK) return;
  desk::BillingFileRequest request;
  request.file = from_wx(choose.GetPath());
  request.kind = kind;
  ClaimFileDialog dialog{this, request,
                         aside([file = file_, kind] { return desk::saved_mappings(file, kind); }),
                         [file = file_](const desk::BillingFileRequest& asked) {
                           return desk::read_into(file, asked);
                         }};
  if (dialog.ShowModal() == wxID_OK) take_over_file(dialog.request());
}

void MainFrame::take_over_file(const desk::BillingFileRequest& request) {
  using Read = Expected<desk::BillingFileOutcome>;
  auto read = std::make_shared<Read>();
  start_job({said("Reading the file"), false,
             [file = file_, request, read](const desk::JobControl&) {
               *read = desk::read_into(file, request);
             },
             [this, read](const desk::JobEnd& end) {
               if (say_failure(end)) return;
               if (!*read) {
                 wxMessageBox(to_wx(read->error().sentence), "Sparewell", wxOK | wxICON_WARNING,
                              this);
                 return;
               }
               auto lines = desk::claim_file_lines(**read);
               for (auto& line : desk::claim_file_problems(**read, 5)) {
                 lines.push_back(std::move(line));
               }
               note_->say(fmt::format("{}", fmt::join(lines, "\n")), {});
               read_again();
             }});
}

void MainFrame::change_payer_rules() {
  RulesDialog dialog{this, *day_};
  if (dialog.ShowModal() == wxID_OK) book(desk::rule_form(*day_, dialog.chosen()));
}

void MainFrame::write_billing_reports() {
  wxDirDialog choose{this, said("Where the reports are written")};
  if (choose.ShowModal() != wxID_OK) return;
  const auto folder = from_wx(choose.GetPath());
  auto written = std::make_shared<std::vector<desk::WrittenReport>>();
  start_job({said("Writing the reports"), false,
             [day = day_, folder, written](const desk::JobControl& control) {
               control.say({say("Comparing the books"), 0.0});
               const auto books = desk::compare_books(day->clinic(), day->today());
               control.say({say("Writing the reports"), 0.6});
               *written = desk::write_billing_reports(day->clinic(), books, day->today(), folder);
             },
             [this, folder, written](const desk::JobEnd& end) {
               if (say_failure(end)) return;
               auto text = say("Written into {}:", folder);
               for (const auto& report : *written) {
                 text += fmt::format("\n{}", report.file.filename().string());
               }
               note_->say(text, {{said("Open &folder"),
                                  [folder] { wxLaunchDefaultApplication(to_wx(folder)); }}});
             }});
}

void MainFrame::show_month_changes() {
  LinesDialog{
      this, said("Changes after closing"),
      said("What was added, taken away or changed in closed months since their last closing."),
      aside([file = file_] { return desk::changes_since_closing(file); })}
      .ShowModal();
}

}  // namespace sparewell::desktop
