#include "desktop/main_frame.hpp"

#include <algorithm>

#include <wx/app.h>
#include <wx/display.h>
#include <wx/notebook.h>
#include <wx/panel.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desk/draft_orders.hpp"
#include "desk/wording.hpp"
#include "desktop/command_menu.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/deliveries_panel.hpp"
#include "desktop/pages/order_panel.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/plan_panel.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/pages/today_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/note_bar.hpp"
#include "desktop/widgets/search_bar.hpp"
#include "desktop/widgets/text_size.hpp"
#include "desktop/widgets/welcome.hpp"
#include "desktop/widgets/work_bar.hpp"

namespace sparewell::desktop {
namespace {

/// Time for the toolkit to lay out and paint a page before the next one is filled: all of them
/// together would be felt.
constexpr int between_pages_ms = 40;

}  // namespace

MainFrame::MainFrame(Date today, std::filesystem::path memory)
    : wxFrame{nullptr, wxID_ANY, "Sparewell"},
      memory_{std::move(memory)},
      remembered_{desk::recall(memory_)} {
  window_layout() = remembered_.layout;
  apply_text_size(remembered_.layout.text_percent);
  file_.today = today;
  file_.who = from_wx(wxGetUserId());
  SetMenuBar(make_menu_bar());
  bar_ = new WorkBar{this, [this] { worker_->ask_to_stop(); }};
  SetStatusBar(bar_);
  make_pages();
  worker_ = std::make_unique<desk::BackgroundWorker>(
      [](std::function<void()> call) { wxTheApp->CallAfter(call); },
      [this](const desk::JobProgress& progress) { bar_->working(progress, can_stop_); });
  bind_events();
  place_as_remembered();
  bar_->idle("");
  update_commands();
}

MainFrame::~MainFrame() = default;

void MainFrame::make_pages() {
  body_ = new wxPanel{this};
  make_search();
  note_ = new NoteBar{body_};
  welcome_ = new Welcome{body_, [this](desk::Command command) { run(command); }};
  book_ = new wxNotebook{body_, wxID_ANY};
  set_accessible_name(*book_, said("Pages"));
  today_ = new TodayPanel{book_, [this](const desk::Destination& there) { go_to(there); }};
  orders_ = new OrderPanel{book_, [this](desk::Command command) { run(command); },
                           [this](const std::optional<Money>& budget) { keep_to(budget); }};
  patients_ = new PatientPanel{book_, [this](desk::Command command) { run(command); },
                               [this] { update_commands(); }};
  shelf_ = new ShelfPanel{book_, [this](desk::Command command) { run(command); },
                          [this] { update_commands(); }};
  wear_ = new WearPanel{book_, [this] { run(desk::Command::test_forecasts); },
                        [this](std::size_t unit) { go_to_unit(unit); }};
  plan_ =
      new PlanPanel{book_,
                    {[this] { run(desk::Command::play_policy); },
                     [this] { run(desk::Command::compare_decisions); },
                     [this](const std::optional<Money>& budget) { keep_to(budget); },
                     [this](std::size_t unit) { go_to_unit(unit); },
                     [this](const desk::SuppliersPage::OrderOf& order) { go_to_order(order); }}};
  deliveries_ = new DeliveriesPanel{
      book_,
      [this](desk::Command command) {
        if (desk::command_spec(command).enabled(state())) run(command);
      },
      [this] {
        if (worker_) update_commands();
      },
      [this](const desk::OrderName& name) {
        return aside([file = file_, &name] { return desk::read_revisions(file, name); });
      }};
  billing_ = new BillingPanel{book_,
                              [this](desk::Command command) {
                                if (desk::command_spec(command).enabled(state())) run(command);
                              },
                              [this] {
                                if (worker_) update_commands();
                              }};
  pages_ = {today_, orders_, patients_, shelf_, wear_, deliveries_, plan_, billing_};
  for (auto* page : pages_) {
    page->put_aside();
    book_->AddPage(page, to_wx(page->tab()));
  }
  book_->Hide();
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(make_header(), wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(search_->results(),
             wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(note_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(welcome_, wxSizerFlags{1}.Expand());
  sizer->Add(book_, wxSizerFlags{1}.Expand());
  body_->SetSizer(sizer);
}

wxSizer* MainFrame::make_header() {
  clinic_name_ = new wxStaticText{body_, wxID_ANY, "Sparewell"};
  clinic_name_->SetFont(clinic_name_->GetFont().Bold().Larger());
  day_words_ = new wxStaticText{body_, wxID_ANY, to_wx(desk::day_words(file_.today))};
  day_words_->SetFont(day_words_->GetFont().Larger());
  day_words_->SetToolTip(said("The day that everything is worked out for"));
  auto* header = new wxBoxSizer{wxHORIZONTAL};
  header->Add(clinic_name_, wxSizerFlags{1}.CentreVertical());
  header->Add(search_->field(), wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(24)));
  header->Add(day_words_, wxSizerFlags{}.CentreVertical());
  return header;
}

void MainFrame::bind_events() {
  for (const auto& spec : desk::command_table()) {
    Bind(
        wxEVT_MENU, [this, command = spec.command](wxCommandEvent&) { run(command); },
        command_id(spec.command));
  }
  Bind(wxEVT_CHAR_HOOK, &MainFrame::on_key, this);
  Bind(wxEVT_CLOSE_WINDOW, &MainFrame::on_close, this);
  later_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { measure_again(*this); });
  next_page_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) {
    if (to_show_.empty()) return update_commands();
    show_on_page(*to_show_.front());
    next_page_.StartOnce(between_pages_ms);
  });
  book_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
    event.Skip();
    show_on_page(*current_page());
    remembered_.page = current_page()->name();
    update_commands();
    if (text_size_was_changed()) later_.StartOnce(50);
    compare_books_if_shown();
  });
}

void MainFrame::place_as_remembered() {
  SetMinSize(FromDIP(wxSize{900, 560}));
  const auto screen = wxDisplay{wxDisplay::GetFromWindow(this) == wxNOT_FOUND
                                    ? 0u
                                    : static_cast<unsigned>(wxDisplay::GetFromWindow(this))}
                          .GetClientArea();
  auto size = FromDIP(wxSize{1280, 760});
  if (remembered_.width > 0) size = FromDIP(wxSize{remembered_.width, remembered_.height});
  size.DecTo(screen.GetSize());
  SetSize(size);
  Centre();
  if (remembered_.maximised) Maximize();
}

void MainFrame::start(const std::string& path) {
  const auto last = path.empty() ? remembered_.clinic_file : path;
  if (last.empty()) return;
  if (path.empty() && !std::filesystem::exists(last)) {
    bar_->idle(say("The clinic file used last, {}, is no longer there.", last));
    return;
  }
  open(last);
}

Page* MainFrame::current_page() const {
  return pages_.at(static_cast<std::size_t>(std::max(0, book_->GetSelection())));
}

void MainFrame::show_test_on(Page& page) {
  if (&page == patients_) patients_->show_test(test_);
  if (&page == wear_) wear_->show_test(test_);
}

void MainFrame::show_play() {
  plan_->show_play(play_);
}

void MainFrame::show_day() {
  const bool first = !book_->IsShown();
  welcome_->Hide();
  book_->Show();
  to_show_ = pages_;
  show_on_page(*current_page());
  next_page_.StartOnce(between_pages_ms);
  const auto& name = day_->clinic().settings.name;
  clinic_name_->SetLabelText(to_wx(name.empty() ? said("Clinic without a name") : name));
  day_words_->SetLabelText(to_wx(desk::day_words(day_->today())));
  const auto file = std::filesystem::path{file_.path}.filename().string();
  SetTitle(to_wx(file + " - Sparewell"));
  body_->Layout();
  if (first) go_to_remembered();
}

void MainFrame::show_on_page(Page& page) {
  const auto at = std::ranges::find(to_show_, &page);
  if (at == to_show_.end()) return;
  to_show_.erase(at);
  const bool was_put_aside = page.is_put_aside();
  page.show_or_wait(day_);
  if (was_put_aside && &page == current_page() && book_->HasFocus()) focus_page();
  if (&page == today_) {
    today_->show_work(work_);
    tell_today_of_books();
  }
  if (day_->worked_out()) {
    show_test_on(page);
    if (&page == plan_) show_play();
  }
  const auto shown = std::ranges::find(pages_, &page) - pages_.begin();
  book_->SetPageText(static_cast<std::size_t>(shown), to_wx(page.tab()));
}

void MainFrame::show_all_pages() {
  while (!to_show_.empty()) show_on_page(*to_show_.front());
}

desk::CommandState MainFrame::state() const {
  desk::CommandState now;
  now.file_open = day_ != nullptr;
  now.busy = worker_->busy();
  now.anything_to_order = day_ && orders_->anything();
  now.drafts = day_ && !desk::draft_orders(day_->clinic()).empty();
  const bool on_patients = day_ && current_page() == patients_;
  now.patient = on_patients && !patients_->chosen_patient().empty();
  now.booked = on_patients && patients_->has_bookings();
  now.part = on_patients && patients_->chosen_unit() != nullptr;
  const auto* finding = on_patients ? patients_->chosen_finding() : nullptr;
  now.against = finding != nullptr && !finding->substance.empty() &&
                (finding->decided || finding->finding.gravity != care::Gravity::note);
  now.other_items = on_patients && patients_->question_of_others().has_value();
  now.issued = on_patients && patients_->chosen_part() != nullptr;
  const bool on_shelf = day_ && current_page() == shelf_;
  const bool on_items = on_shelf && !shelf_->shows_moves();
  now.lot = on_items && shelf_->chosen_lot();
  now.item = on_items && !shelf_->chosen_item().empty();
  now.away = on_items && shelf_->chosen_away();
  now.branches = day_ && day_->branches().several();
  now.move = on_shelf && shelf_->chosen_move() != nullptr;
  if (day_ && std::ranges::find(to_show_, deliveries_) == to_show_.end()) {
    const auto actions = deliveries_->actions();
    now.order_placeable = actions.place;
    now.order_approvable = actions.approve;
    now.order_amendable = actions.amend;
    now.order_to_come = actions.back_order;
    now.order_cancellable = actions.cancel;
    now.order_reprintable = actions.reprint;
  }
  const auto* item = day_ && current_page() == billing_ ? billing_->chosen() : nullptr;
  now.finding = item != nullptr;
  now.finding_with_patient = item != nullptr && !item->finding.patient.empty();
  now.undoable = undo_.anything();
  now.printable = day_ && current_page()->printable().has_value();
  now.paper = day_ && unit_for_paper() != nullptr;
  return now;
}

void MainFrame::update_commands() {
  if (!worker_) return;
  const auto now = state();
  GetMenuBar()->SetLabel(command_id(desk::Command::undo), to_wx(say("&{}\tCtrl+Z", undo_.label())));
  for (const auto& spec : desk::command_table()) {
    GetMenuBar()->Enable(command_id(spec.command), spec.enabled(now));
  }
  orders_->allow_writing(desk::command_spec(desk::Command::write_orders).enabled(now));
  patients_->allow_work(now);
  shelf_->allow_work(now);
  deliveries_->allow(now);
  billing_->allow(now);
  wear_->allow_testing(desk::command_spec(desk::Command::test_forecasts).enabled(now));
  plan_->allow_playing(desk::command_spec(desk::Command::play_policy).enabled(now));
  plan_->allow_comparing(desk::command_spec(desk::Command::compare_decisions).enabled(now));
  plan_->allow_budget(now.file_open && !now.busy);
  orders_->allow_budget(now.file_open && !now.busy);
}

void MainFrame::on_key(wxKeyEvent& event) {
  if (take_search_key(event)) return;
  const auto command = command_of_key(event);
  if (command && desk::command_spec(*command).enabled(state())) {
    run(*command);
  } else {
    event.Skip();
  }
}

void MainFrame::keep_memory() {
  remembered_.maximised = IsMaximized();
  if (!remembered_.maximised) {
    remembered_.width = ToDIP(GetSize()).x;
    remembered_.height = ToDIP(GetSize()).y;
  }
  remembered_.layout = window_layout();
  desk::remember(remembered_, memory_);
}

void MainFrame::on_close(wxCloseEvent& event) {
  if (worker_->busy() && event.CanVeto()) {
    // The window goes as soon as the work has ended, so that nothing is cut off half-way.
    closing_ = true;
    worker_->ask_to_stop();
    bar_->working({said("Finishing before the window closes"), std::nullopt}, false);
    event.Veto();
    return;
  }
  keep_memory();
  Destroy();
}

}  // namespace sparewell::desktop
