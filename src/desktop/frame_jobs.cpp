#include <fmt/format.h>
#include <wx/msgdlg.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desk/import_trial.hpp"
#include "desk/wording.hpp"
#include "desktop/dialogs/import_report_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/plan_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/note_bar.hpp"
#include "desktop/widgets/search_bar.hpp"
#include "desktop/widgets/work_bar.hpp"

namespace sparewell::desktop {
namespace {

using desk::JobControl;
using desk::JobEnd;

}  // namespace

void MainFrame::start_job(desk::Job job) {
  // The books are compared unasked; what is asked for meanwhile comes after it.
  if (worker_->busy()) return waiting_jobs_.push_back(std::move(job));
  can_stop_ = job.can_stop;
  auto finish = std::move(job.finish);
  job.finish = [this, finish = std::move(finish)](const JobEnd& end) {
    bar_->idle(idle_words());
    // What it found may be shown on any of them.
    show_all_pages();
    finish(end);
    if (!waiting_jobs_.empty() && !worker_->busy() && !closing_) {
      auto next = std::move(waiting_jobs_.front());
      waiting_jobs_.erase(waiting_jobs_.begin());
      start_job(std::move(next));
    }
    update_commands();
    if (closing_ && !worker_->busy()) Close();
  };
  worker_->start(std::move(job));
  update_commands();
}

std::string MainFrame::idle_words() const {
  return file_.path;
}

bool MainFrame::say_failure(const JobEnd& end) {
  if (!end.failure) return false;
  wxMessageBox(to_wx(desk::describe_failure(end.failure)), "Sparewell", wxOK | wxICON_ERROR, this);
  return true;
}

void MainFrame::open(const std::string& path) {
  auto file = file_;
  file.path = path;
  file.budget.reset();
  auto records = std::make_shared<desk::ClinicRecords>();
  auto views = std::make_shared<desk::DayViews>();
  start_job({said("Opening the clinic file"), false,
             [file, records, views](const JobControl& control) {
               *records = desk::read_records(file, control);
               *views = desk::prepare_views(std::make_shared<const desk::Day>(
                   desk::records_only(records->clinic, file.today)));
             },
             [this, file, records, views](const JobEnd& end) {
               if (say_failure(end)) return;
               file_ = file;
               remembered_.clinic_file = std::filesystem::absolute(file.path).string();
               undo_.forget();
               test_.reset();
               play_.reset();
               books_.reset();
               note_->put_away();
               take_over(std::move(*views));
               work_out(records);
             }});
}

void MainFrame::work_out(std::shared_ptr<desk::ClinicRecords> records) {
  auto views = std::make_shared<desk::DayViews>();
  start_job(
      {said("Working out how long parts will last and what to order"), true,
       [file = file_, records, views](const JobControl& control) {
         *views = desk::prepare_views(desk::work_out(std::move(*records), file, control));
       },
       [this, views](const JobEnd& end) {
         if (say_failure(end)) return;
         if (!views->day) {
           return note_->say(say("Stopped: how long parts will last and what to order is not "
                                 "worked out."),
                             {{said("&Work it out"), [this] { run(desk::Command::refresh); }}});
         }
         renew(std::move(*views));
         bar_->idle(idle_words());
         if (day_->clinic().items.empty() && day_->clinic().patients.empty()) {
           note_->say(
               say("The clinic file is empty. Choose the clinic's own folder of CSV files "
                   "next: the dry run shows what would be read before anything is imported."),
               {{said("&Import folder..."), [this] { run(desk::Command::import_folder); }},
                {said("Clinic &details..."), [this] { run(desk::Command::clinic_details); }}});
         }
         compare_books_if_shown();
       }});
}

void MainFrame::create(const std::string& path) {
  auto file = file_;
  file.path = path;
  start_job({said("Making the clinic file"), false,
             [file](const JobControl&) { desk::make_clinic_file(file); },
             [this, path](const JobEnd& end) {
               if (say_failure(end)) return;
               open(path);
             }});
}

void MainFrame::read_again(std::function<void()> then) {
  auto views = std::make_shared<desk::DayViews>();
  start_job({said("Reading the clinic file"), false,
             [file = file_, views](const JobControl& control) {
               *views = desk::prepare_views(desk::read_day(file, control));
             },
             [this, views, then = std::move(then)](const JobEnd& end) {
               // Stopped only because the window closes.
               if (say_failure(end) || !views->day) return;
               renew(std::move(*views));
               if (!then) return;
               show_all_pages();
               then();
             }});
}

void MainFrame::renew(desk::DayViews views) {
  // A test says nothing about forecasts that rest on other records.
  if (!desk::same_history(day_->clinic(), views.day->clinic())) test_.reset();
  if (!desk::same_play(day_->clinic(), views.day->clinic())) play_.reset();
  books_.reset();
  take_over(std::move(views));
  compare_books_if_shown();
}

void MainFrame::take_over(desk::DayViews views) {
  day_ = std::move(views.day);
  work_ = std::move(views.work);
  search_->show(views.index);
  patients_->prepare(day_, std::move(views.patients));
  show_day();
}

void MainFrame::test_forecasts() {
  go_to_wear(WearPanel::Pane::test);
  auto test = std::make_shared<desk::ForecastTestPtr>();
  start_job({said("Testing the forecasts on the clinic's history"), true,
             [day = day_, test](const JobControl& control) {
               *test = desk::test_forecasts(*day, control);
             },
             [this, test](const JobEnd& end) {
               if (say_failure(end) || !*test) return;
               test_ = *test;
               for (auto* page : pages_) show_test_on(*page);
             }});
}

void MainFrame::play_policy() {
  go_to_plan(PlanPanel::Pane::play);
  auto play = std::make_shared<desk::PolicyPlayPtr>();
  start_job(
      {said("Playing the policy"), true,
       [day = day_, play](const JobControl& control) { *play = desk::play_policy(*day, control); },
       [this, play](const JobEnd& end) {
         if (say_failure(end) || !*play) return;
         play_ = *play;
         show_play();
       }});
}

void MainFrame::compare_decisions() {
  go_to_plan(PlanPanel::Pane::what_if);
  auto compared = std::make_shared<std::vector<desk::Compared>>();
  start_job({said("Comparing what could be decided"), true,
             [day = day_, questions = plan_->questions(), compared](const JobControl& control) {
               *compared = desk::compare(day->assessment(), questions, control);
             },
             [this, compared](const JobEnd& end) {
               if (say_failure(end) || compared->empty()) return;
               plan_->show_compared(*compared);
             }});
}

void MainFrame::keep_to(const std::optional<Money>& budget) {
  file_.budget = budget;
  read_again();
}

void MainFrame::import_from(const std::string& folder, const exchange::FolderFormat& format) {
  remembered_.import_folder = folder;
  auto report = std::make_shared<desk::ImportReport>();
  start_job({said("Importing the folder"), true,
             [file = file_, folder, format, report](const JobControl& control) {
               *report = desk::bring_in_folder(file, folder, format, control);
             },
             [this, report](const JobEnd& end) {
               if (say_failure(end)) return;
               undo_.did_for_good(say("a folder was imported"));
               read_again();
               ImportReportDialog{this, *report}.ShowModal();
             }});
}

void MainFrame::try_import(const std::string& folder, const exchange::FolderFormat& format) {
  remembered_.import_folder = folder;
  auto trial = std::make_shared<desk::ImportTrial>();
  start_job({say("Trying the import"), true,
             [file = file_, folder, format, trial](const JobControl& control) {
               *trial = desk::try_folder(file, folder, format, control);
             },
             [this, trial, folder, format](const JobEnd& end) {
               if (say_failure(end) || end.stopped) return;
               ImportReportDialog dialog{this, *trial};
               if (dialog.ShowModal() == wxID_OK) import_from(folder, format);
             }});
}

void MainFrame::write_into(const std::string& folder) {
  remembered_.orders_folder = folder;
  auto written = std::make_shared<std::vector<desk::WrittenOrder>>();
  start_job({said("Writing the order workbooks"), false,
             [file = file_, day = day_, folder, written](const JobControl&) {
               *written = desk::write_workbooks(file, *day, folder);
             },
             [this, written, folder](const JobEnd& end) {
               if (say_failure(end)) return;
               // Not before the drafts are read, because they can be marked as sent from there.
               read_again([this, written, folder] { say_written(*written, folder); });
             }});
}

void MainFrame::say_written(const std::vector<desk::WrittenOrder>& written,
                            const std::string& folder) {
  const auto count = static_cast<long long>(written.size());
  auto text =
      say_n("{} order workbook was written into {}:", "{} order workbooks were written into {}:",
            written.size(), desk::number_words(count), folder);
  for (const auto& order : written) {
    text += fmt::format("\n{}  {}, {}, {}", order.file.filename().string(), order.supplier.text,
                        desk::count_words(order.lines, "line", "lines"),
                        desk::count_words(order.pieces, "piece", "pieces"));
  }
  text += fmt::format("\n{}", said("They count as on order once you mark them as sent."));
  note_->say(text, {{said("Open &folder"), [folder] { wxLaunchDefaultApplication(to_wx(folder)); }},
                    {said("Mar&k as sent..."), [this] { run(desk::Command::mark_as_sent); }}});
}

void MainFrame::mark(std::vector<std::string> numbers) {
  auto sent = std::make_shared<desk::SentOrders>();
  start_job({said("Marking orders as sent"), false,
             [file = file_, numbers = std::move(numbers), sent](const JobControl&) {
               *sent = desk::mark_sent(file, numbers);
             },
             [this, sent](const JobEnd& end) {
               if (say_failure(end)) return;
               if (!sent->placed.empty()) undo_.did_for_good(say("orders were marked as sent"));
               auto text =
                   say_n("{} order now counts as on order.", "{} orders now count as on order.",
                         sent->placed.size(), desk::number_words(std::ssize(sent->placed)));
               for (const auto& sentence : sent->waiting) text += fmt::format("\n{}", sentence);
               note_->say(text, {});
               read_again();
             }});
}

void MainFrame::save(const ClinicSettings& settings) {
  start_job({said("Keeping the clinic's details"), false,
             [file = file_, settings](const JobControl&) { desk::save_settings(file, settings); },
             [this](const JobEnd& end) {
               if (!say_failure(end)) read_again();
             }});
}

}  // namespace sparewell::desktop
