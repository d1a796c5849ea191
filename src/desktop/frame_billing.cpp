#include <fmt/format.h>

#include "desk/billing/answering.hpp"
#include "desk/billing/books.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/patient_panel.hpp"

namespace sparewell::desktop {

void MainFrame::go_to_billing() {
  go_to(*billing_);
}

void MainFrame::compare_books(std::function<void()> then) {
  auto items = std::make_shared<desk::WorklistPtr>();
  start_job({"Comparing the books", false,
             [day = day_, items](const desk::JobControl&) {
               auto books = desk::compare_books(day->clinic(), day->today());
               *items =
                   std::make_shared<const std::vector<billing::WorkItem>>(std::move(books.items));
             },
             [this, items, then = std::move(then)](const desk::JobEnd& end) {
               if (say_failure(end)) return;
               books_ = *items;
               billing_->show_books(books_);
               go_to_billing();
               if (then) then();
             }});
}

void MainFrame::answer_finding() {
  if (const auto* item = billing_->chosen()) book(desk::answer_form(*day_, *item));
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

}  // namespace sparewell::desktop
