#include <fmt/format.h>
#include <wx/dirdlg.h>
#include <wx/filedlg.h>
#include <wx/stdpaths.h>

#include "clinic/say.hpp"
#include "desk/billing/billing_jobs.hpp"
#include "desk/draft_orders.hpp"
#include "desk/patient_place.hpp"
#include "desk/reaction_form.hpp"
#include "desk/sensitivity_forms.hpp"
#include "desktop/dialogs/clinic_dialog.hpp"
#include "desktop/dialogs/help_dialogs.hpp"
#include "desktop/dialogs/import_dialog.hpp"
#include "desktop/dialogs/orders_folder_dialog.hpp"
#include "desktop/dialogs/sent_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/deliveries_panel.hpp"
#include "desktop/pages/order_panel.hpp"
#include "desktop/pages/page.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/plan_panel.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/pages/today_panel.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr auto file_kinds = to_say("Clinic files (*.db)|*.db|All files|*");

}  // namespace

void MainFrame::run(desk::Command command) {
  using desk::Command;
  switch (command) {
    case Command::open_file:
      return choose_file();
    case Command::new_file:
      return make_file();
    case Command::import_folder:
      return import();
    case Command::clinic_details:
      return edit_details();
    case Command::undo:
      return undo();
    case Command::print_page:
      return print_page();
    case Command::quit:
      Close();
      return;
    case Command::write_orders:
      return write_workbooks();
    case Command::mark_as_sent:
      return mark_as_sent();
    case Command::issue_part:
      return issue_part();
    case Command::end_part:
      return end_part();
    case Command::book_parts:
      return book_parts();
    case Command::findings:
      return show_findings();
    case Command::everyones_findings:
      return show_everyones_findings();
    case Command::other_items:
      return show_other_items();
    case Command::decide_part:
      return decide_part();
    case Command::note_sensitivity:
      return note_sensitivity();
    case Command::note_substance:
      return book(desk::relation_form(*day_));
    case Command::constituents:
      return change_constituents();
    case Command::check_trip:
      return check_trip();
    case Command::parts_list:
      return write_parts_list();
    case Command::record_measurement:
      return record_measurement();
    case Command::show_fit:
      return show_fit();
    case Command::record_reaction:
      return book(desk::reaction_form(*day_, {patients_->chosen_patient()}));
    case Command::reaction_healed:
      return record_healed();
    case Command::reactions:
      return show_reactions();
    case Command::cancel_booking:
      return cancel_booking();
    case Command::patient_place:
      return book(desk::patient_place_form(*day_, {patients_->chosen_patient()}));
    case Command::sheet_again:
      return write_sheet_again();
    case Command::sheet_signed:
      return record_signature();
    case Command::play_policy:
      return play_policy();
    case Command::compare_decisions:
      return compare_decisions();
    case Command::held_back:
      return go_to_plan(PlanPanel::Pane::held);
    case Command::suppliers:
      return go_to_plan(PlanPanel::Pane::suppliers);
    case Command::stock_move:
      return work_on_lot(desk::LotAction::move);
    case Command::stock_quarantine:
      return work_on_lot(desk::LotAction::quarantine);
    case Command::stock_write_off:
      return work_on_lot(desk::LotAction::write_off);
    case Command::stock_return:
      return work_on_lot(desk::LotAction::send_back);
    case Command::stock_lend:
      return work_on_lot(desk::LotAction::lend);
    case Command::stock_settle:
      return settle_away();
    case Command::stock_reverse:
      return take_back();
    case Command::stock_places:
      return book(desk::place_form(*day_));
    case Command::branch_moves:
      return show_branch_moves();
    case Command::send_moves:
      return send_moves();
    case Command::test_forecasts:
      return test_forecasts();
    case Command::search_everything:
      return search_everything();
    case Command::page_today:
      return go_to(*today_);
    case Command::page_orders:
      return go_to(*orders_);
    case Command::page_patients:
      return go_to(*patients_);
    case Command::page_shelf:
      return go_to(*shelf_);
    case Command::page_wear:
      return go_to_wear(WearPanel::Pane::test);
    case Command::page_plan:
      return go_to(*plan_);
    case Command::page_deliveries:
      return go_to(*deliveries_);
    case Command::page_billing:
      return go_to_billing();
    case Command::compare_books:
      return compare_books();
    case Command::answer_finding:
      return answer_finding();
    case Command::finding_patient:
      return go_to_finding_patient();
    case Command::note_paper:
      return note_paper();
    case Command::read_claims:
      return read_billing_file(desk::BillingFileKind::claims);
    case Command::read_payments:
      return read_billing_file(desk::BillingFileKind::remittance);
    case Command::payer_rules:
      return change_payer_rules();
    case Command::billing_reports:
      return write_billing_reports();
    case Command::close_month:
      return book(desk::close_form(*day_, books_));
    case Command::month_changes:
      return show_month_changes();
    case Command::receive_delivery:
      return receive_delivery();
    case Command::place_order:
      return place_order();
    case Command::approve_order:
      return approve_order();
    case Command::amend_line:
      return amend_line();
    case Command::back_order:
      return back_order();
    case Command::cancel_order:
      return cancel_order();
    case Command::reprint_order:
      return reprint_order();
    case Command::wear_effects:
      return go_to_wear(WearPanel::Pane::effects);
    case Command::wear_early:
      return go_to_wear(WearPanel::Pane::early);
    case Command::stock_list:
      return write_stock_list();
    case Command::count_sheet:
      return write_count_sheet();
    case Command::enter_count:
      return enter_count();
    case Command::month_forecast:
      return forecast_months();
    case Command::price_list:
      return take_price_list();
    case Command::recall:
      return look_up_recall();
    case Command::visit_sheets:
      return prepare_visits();
    case Command::find:
      if (day_) current_page()->find();
      return;
    case Command::refresh:
      return read_again();
    case Command::larger_text:
      return change_text_size(1);
    case Command::smaller_text:
      return change_text_size(-1);
    case Command::usual_text:
      return change_text_size(0);
    case Command::usual_columns:
      return use_usual_columns();
    case Command::choose_ways:
      return choose_ways();
    case Command::help:
      return show_help();
    case Command::keys:
      return show_keys(this);
    case Command::about:
      return show_about(this);
  }
}

void MainFrame::go_to_wear(WearPanel::Pane pane) {
  go_to(*wear_);
  wear_->open(pane);
}

void MainFrame::go_to_plan(PlanPanel::Pane pane) {
  if (!day_) return;
  go_to(*plan_);
  plan_->open(pane);
}

void MainFrame::choose_file() {
  wxFileDialog dialog{this, said("Open clinic file"), "",
                      "",   said(file_kinds),         wxFD_OPEN | wxFD_FILE_MUST_EXIST};
  if (dialog.ShowModal() == wxID_OK) open(from_wx(dialog.GetPath()));
}

void MainFrame::make_file() {
  wxFileDialog dialog{
      this,        said("New clinic file"), wxStandardPaths::Get().GetDocumentsDir(),
      "clinic.db", said(file_kinds),        wxFD_SAVE};
  if (dialog.ShowModal() != wxID_OK) return;
  auto path = dialog.GetPath();
  if (!path.Lower().EndsWith(".db")) path += ".db";
  create(from_wx(path));
}

void MainFrame::import() {
  ImportDialog dialog{this, remembered_.import_folder};
  const int answer = dialog.ShowModal();
  if (answer == wxID_OK) import_from(dialog.folder(), dialog.format());
  if (answer == ImportDialog::try_first) try_import(dialog.folder(), dialog.format());
}

void MainFrame::edit_details() {
  ClinicDialog dialog{this, day_->clinic().settings};
  if (dialog.ShowModal() == wxID_OK) save(dialog.settings());
}

void MainFrame::write_workbooks() {
  auto folder = remembered_.orders_folder;
  if (folder.empty()) {
    folder = fmt::format("{}/{}", from_wx(wxStandardPaths::Get().GetDocumentsDir()),
                         said("Sparewell orders"));
  }
  OrdersFolderDialog dialog{this, folder};
  if (dialog.ShowModal() == wxID_OK) write_into(dialog.folder());
}

void MainFrame::mark_as_sent() {
  SentDialog dialog{this, desk::draft_orders(day_->clinic())};
  if (dialog.ShowModal() != wxID_OK) return;
  if (auto numbers = dialog.numbers(); !numbers.empty()) mark(std::move(numbers));
}

}  // namespace sparewell::desktop
