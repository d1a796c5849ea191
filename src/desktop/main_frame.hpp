/// The window: its pages over one clinic file, and what it can be told to do.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>

#include <wx/frame.h>
#include <wx/timer.h>

#include "desk/billing/billing_page.hpp"
#include "desk/billing/claim_files.hpp"
#include "desk/clinic_jobs.hpp"
#include "desk/commands.hpp"
#include "desk/day_views.hpp"
#include "desk/destination.hpp"
#include "desk/job.hpp"
#include "desk/list_jobs.hpp"
#include "desk/order_jobs.hpp"
#include "desk/policy_play.hpp"
#include "desk/remembered.hpp"
#include "desk/search/scan_burst.hpp"
#include "desk/stock_form.hpp"
#include "desk/suppliers_page.hpp"
#include "desk/undo.hpp"
#include "desktop/pages/plan_panel.hpp"
#include "desktop/pages/wear_panel.hpp"

class wxNotebook;
class wxPanel;
class wxStaticText;

namespace sparewell::desktop {

class BillingPanel;
class DeliveriesPanel;
class NoteBar;
class OrderPanel;
class Page;
class PatientPanel;
class SearchBar;
class ShelfPanel;
class TodayPanel;
class Welcome;
class WorkBar;

class MainFrame : public wxFrame {
 public:
  /// `memory` is where the window keeps what it remembers.
  MainFrame(Date today, std::filesystem::path memory);
  ~MainFrame() override;

  /// Opens this file, or the last one when the path is empty.
  void start(const std::string& path);
  void run(desk::Command command);

 private:
  // main_frame.cpp: the window itself
  void make_pages();
  wxSizer* make_header();
  void bind_events();
  void place_as_remembered();
  /// Shows the day on the page that is in front, and on the others one by one in between what a
  /// person does, so that the window always answers.
  void show_day();
  /// If it does not show the day yet.
  void show_on_page(Page& page);
  void show_all_pages();
  /// Where the page shows how well the forecasts did.
  void show_test_on(Page& page);
  void show_play();
  void update_commands();
  [[nodiscard]] desk::CommandState state() const;
  void on_key(wxKeyEvent& event);
  void on_close(wxCloseEvent& event);
  void keep_memory();
  [[nodiscard]] Page* current_page() const;

  // frame_go.cpp: from one place to another
  /// Goes there and starts what is to be started there, if it can be used now. Where it leads to a
  /// finding of the books, these are compared first.
  void go_to(const desk::Destination& destination);
  void go_to(const Page& page);
  /// The page in front; the rows on Today, which lead on with Enter.
  void focus_page();
  void go_to_remembered();
  void go_to_unit(std::size_t unit);
  void go_to_patient(const PatientRef& patient);
  void go_to_order(const desk::SuppliersPage::OrderOf& order);
  void go_to_shelf(const desk::Destination& destination);
  void show_place(const desk::Destination& destination);
  void go_where_books_lead();
  /// Compares the books where the page that is shown tells of them.
  void compare_books_if_shown();
  void tell_today_of_books();

  // frame_commands.cpp: what is asked before work starts
  void go_to_wear(WearPanel::Pane pane);
  void go_to_plan(PlanPanel::Pane pane);
  void choose_file();
  void make_file();
  void import();
  /// Shows what an import would do; from there it can be done.
  void try_import(const std::string& folder, const exchange::FolderFormat& format);
  void edit_details();
  void write_workbooks();
  void mark_as_sent();

  // frame_patients.cpp: parts handed over, ended, and booked for visits
  void issue_part();
  void write_sheet(const std::vector<Unit>& units);
  void end_part();
  void book_parts();
  void record_measurement();
  void show_fit();
  void show_reactions();
  void record_healed();
  void cancel_booking();
  /// Where the sheet of what was handed over with `unit` is to be written; "" for nowhere.
  [[nodiscard]] std::string ask_sheet_file(const Unit& unit, const std::string& title);
  void write_sheet_again();
  void record_signature();

  // frame_care.cpp: what may be worn
  void show_findings();
  void show_everyones_findings();
  void show_other_items();
  void decide_part();
  void note_sensitivity();
  void change_constituents();

  // frame_papers.cpp: papers for patients and for visits
  void check_trip();
  void write_parts_list();
  void prepare_visits();
  void say_paper(const std::string& file);

  // frame_stock.cpp: work on the shelf
  void work_on_lot(desk::LotAction action);
  void settle_away();
  void take_back();
  void show_branch_moves();
  void send_moves();
  void book(const desk::StockForm& form);
  // frame_lists.cpp: lists, counts, price lists and recalls
  void write_stock_list();
  void forecast_months();
  void write_count_sheet();
  void enter_count();
  void book_count(const desk::CountSheet& sheet, const desk::CountBooking& booking);
  void take_price_list();
  void read_prices(const desk::PriceListRequest& request, desk::PriceAcceptance acceptance);
  void show_prices(const desk::PriceListRequest& request, desk::PriceAcceptance acceptance,
                   const Expected<desk::PriceListOutcome>& outcome);
  void look_up_recall();
  void write_list(const std::string& what, const std::string& file, std::function<void()> write);
  void say_workbook(const std::string& file);

  // frame_deliveries.cpp: what is done with the order chosen on the page "Deliveries"
  void receive_delivery();
  void place_order();
  void approve_order();
  void cancel_order();
  void amend_line();
  void back_order();
  void reprint_order();
  /// Gives the refusal, or "" and keeps what was done in order_news_.
  std::string change_order(const desk::OrderChange& change);
  void tell_order_news();

  // frame_billing.cpp: the books
  void go_to_billing();
  void compare_books();
  void answer_finding();
  void go_to_finding_patient();
  /// The part whose papers can be noted: of the chosen finding, or on the page "Patients".
  [[nodiscard]] const Unit* unit_for_paper() const;
  void note_paper();
  void read_billing_file(desk::BillingFileKind kind);
  void take_over_file(const desk::BillingFileRequest& request);
  void change_payer_rules();
  void write_billing_reports();
  void show_month_changes();

  // frame_comfort.cpp: how the window looks and what it remembers of that
  void use_usual_columns();
  /// `steps` larger or smaller; 0 for the usual size.
  void change_text_size(int steps);
  void choose_ways();
  void print_page();
  void show_help();
  // frame_undo.cpp
  void undo();
  /// Notes that a form was booked; `before` is what was booked for visits until then.
  void note_done(const desk::StockForm& form, const desk::Booked& booked,
                 const std::vector<Reservation>& before);
  void note_done(std::optional<desk::UndoStep> step, const std::string& what);
  [[nodiscard]] std::vector<Reservation> visit_bookings() const;
  /// Says what was done, with a way back where there is one.
  void say_done(const std::string& text);

  // frame_search.cpp: one search for everything, and scanning anywhere
  void make_search();
  void search_everything();
  /// Whether the key belongs to the search or to a scan.
  [[nodiscard]] bool take_search_key(const wxKeyEvent& event);

  // frame_jobs.cpp: the work
  void start_job(desk::Job job);
  void open(const std::string& path);
  /// The records are shown already.
  void work_out(std::shared_ptr<desk::ClinicRecords> records);
  void create(const std::string& path);
  /// `then` is called once the window shows what was read.
  void read_again(std::function<void()> then = {});
  void import_from(const std::string& folder, const exchange::FolderFormat& format);
  void write_into(const std::string& folder);
  void test_forecasts();
  void play_policy();
  void compare_decisions();
  void keep_to(const std::optional<Money>& budget);
  /// Puts a day in place that was read from the same file again.
  void renew(desk::DayViews views);
  void take_over(desk::DayViews views);
  void mark(std::vector<std::string> numbers);
  void save(const ClinicSettings& settings);
  /// Words for a failure; false when there was none.
  bool say_failure(const desk::JobEnd& end);
  void say_written(const std::vector<desk::WrittenOrder>& written, const std::string& folder);
  [[nodiscard]] std::string idle_words() const;

  std::filesystem::path memory_;
  desk::Remembered remembered_;
  desk::ClinicFile file_;  ///< its path is "" while none is open
  desk::DayPtr day_;
  desk::TodayWorkPtr work_;     ///< what needs a person on that day
  desk::ForecastTestPtr test_;  ///< of the open file; goes when its history has changed
  desk::PolicyPlayPtr play_;    ///< of the open file; goes when what it rests on has changed
  std::vector<desk::Job> waiting_jobs_;  ///< started when the one under way has ended
  bool closing_ = false;
  bool can_stop_ = false;

  wxPanel* body_ = nullptr;
  wxStaticText* clinic_name_ = nullptr;
  wxStaticText* day_words_ = nullptr;
  NoteBar* note_ = nullptr;
  Welcome* welcome_ = nullptr;
  wxNotebook* book_ = nullptr;
  TodayPanel* today_ = nullptr;
  OrderPanel* orders_ = nullptr;
  PatientPanel* patients_ = nullptr;
  ShelfPanel* shelf_ = nullptr;
  WearPanel* wear_ = nullptr;
  PlanPanel* plan_ = nullptr;
  DeliveriesPanel* deliveries_ = nullptr;
  BillingPanel* billing_ = nullptr;
  desk::UndoList undo_;
  desk::WorklistPtr books_;  ///< of the open file and day; nullptr while not compared
  std::optional<desk::Destination> after_books_;  ///< where to go once they are compared
  std::string order_news_;                        ///< what was done with an order, to be told
  std::unique_ptr<SearchBar> search_;
  desk::ScanBurst scan_;
  WorkBar* bar_ = nullptr;
  wxTimer next_page_;  ///< shows the day on the next of them
  wxTimer later_;      ///< measures texts again once the toolkit has their new size
  std::vector<Page*> pages_;
  std::vector<Page*> to_show_;  ///< those that do not show the day yet
  /// Last, so that it is the first to go: its job may use everything above.
  std::unique_ptr<desk::BackgroundWorker> worker_;
};

}  // namespace sparewell::desktop
