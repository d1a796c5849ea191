// Going from one place of the window to another.
#include <algorithm>

#include <wx/notebook.h>

#include "desktop/main_frame.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/deliveries_panel.hpp"
#include "desktop/pages/order_panel.hpp"
#include "desktop/pages/page.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/pages/today_panel.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {

void MainFrame::go_to(const Page& page) {
  if (!book_->IsShown()) return;
  book_->SetSelection(static_cast<std::size_t>(std::ranges::find(pages_, &page) - pages_.begin()));
  focus_page();
}

void MainFrame::focus_page() {
  // Keys come to the window only where something has the focus.
  if (current_page()->is_put_aside()) return book_->SetFocus();
  current_page()->SetFocus();
  if (current_page() == today_) today_->focus_rows();
}

void MainFrame::go_to_remembered() {
  const auto found = std::ranges::find(pages_, remembered_.page, &Page::name);
  if (found == pages_.end()) return go_to(*today_);
  go_to(**found);
}

void MainFrame::go_to_unit(std::size_t unit) {
  go_to(*patients_);
  patients_->choose(day_->clinic().units.at(unit).patient, unit);
}

void MainFrame::go_to_patient(const PatientRef& patient) {
  go_to(*patients_);
  if (patient.empty()) return patients_->find();
  patients_->choose(patient);
  patients_->focus_list();
}

void MainFrame::go_to_order(const desk::SuppliersPage::OrderOf& order) {
  go_to(*deliveries_);
  deliveries_->choose({order.ref, order.supplier.text});
}

void MainFrame::go_to_shelf(const desk::Destination& destination) {
  go_to(*shelf_);
  if (!destination.row.empty()) return shelf_->choose_away(destination.row);
  if (destination.item.empty()) return shelf_->find();
  shelf_->choose(destination.item, destination.lot);
}

void MainFrame::show_place(const desk::Destination& destination) {
  using To = desk::Destination::To;
  switch (destination.to) {
    case To::patient:
      return destination.unit ? go_to_unit(*destination.unit) : go_to_patient(destination.patient);
    case To::findings:
      if (destination.patient.empty()) return show_everyones_findings();
      go_to_patient(destination.patient);
      return patients_->show_findings();
    case To::shelf:
      return go_to_shelf(destination);
    case To::order_lines:
      go_to(*orders_);
      return orders_->choose(destination.item);
    case To::delivery:
      go_to(*deliveries_);
      return destination.order ? deliveries_->choose(*destination.order) : deliveries_->find();
    case To::billing:
      go_to(*billing_);
      return billing_->choose(destination.row);
    case To::page:
      return;
  }
}

void MainFrame::go_to(const desk::Destination& destination) {
  if (!day_) return;
  if (destination.to == desk::Destination::To::billing && !books_) {
    after_books_ = destination;
    if (!worker_->busy()) compare_books();
    return go_to(*billing_);
  }
  show_place(destination);
  update_commands();
  if (destination.then && desk::command_spec(*destination.then).enabled(state())) {
    run(*destination.then);
  }
}

void MainFrame::compare_books_if_shown() {
  if (!day_ || books_ || worker_->busy()) return;
  if (current_page() == billing_ || current_page() == today_) compare_books();
}

void MainFrame::tell_today_of_books() {
  using Books = desk::TodayPage::Books;
  today_->show_books(books_ ? Books::compared : Books::not_compared, books_);
  book_->SetPageText(0, to_wx(today_->tab()));
}

void MainFrame::go_where_books_lead() {
  const auto destination = std::exchange(after_books_, std::nullopt);
  // Whoever went elsewhere meanwhile stays there.
  if (destination && current_page() == billing_) go_to(*destination);
}

}  // namespace sparewell::desktop
