// What each page puts on paper.

#include "clinic/say.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/deliveries_panel.hpp"
#include "desktop/pages/order_panel.hpp"
#include "desktop/pages/patient/findings_pane.hpp"
#include "desktop/pages/patient/parts_pane.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/shelf/moves_pane.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

std::optional<desk::Printable> OrderPanel::printable() const {
  if (!day_) return std::nullopt;
  return desk::printable_of(*day_, say("Orders of today"),
                            {desk::printed(page_.lines(), "", page_.empty_words()),
                             desk::printed(page_.totals(), say("Totals by supplier"))},
                            {page_.headline()});
}

std::optional<desk::Printable> DeliveriesPanel::printable() const {
  if (!day_) return std::nullopt;
  std::vector<desk::PrintedTable> tables{
      desk::printed(orders_view_->table(), say("Orders"), page_.empty_words())};
  if (!order().empty() && lines_view_->IsShown()) {
    tables.push_back(desk::printed(lines_, page_.detail(order()).title));
  }
  return desk::printable_of(*day_, say("Deliveries"), std::move(tables));
}

std::optional<desk::Printable> BillingPanel::printable() const {
  if (!day_) return std::nullopt;
  return desk::printable_of(*day_, say("Findings of billing"),
                            {desk::printed(list_->table(), "", page_.empty_words())},
                            {page_.summary()});
}

std::optional<desk::Printable> ShelfPanel::printable() const {
  if (!day_) return std::nullopt;
  if (shows_moves()) {
    return desk::printable_of(*day_, say("Moves between branches"),
                              {desk::printed(moves_->table())});
  }
  return desk::printable_of(*day_, say("Shelf"),
                            {desk::printed(items_view_->table(), "", page_.empty_words())});
}

std::optional<desk::Printable> PatientPanel::printable() const {
  if (!day_ || chosen_patient().empty()) return std::nullopt;
  const auto card = desk::patient_card(*day_, {chosen_patient()}, parts_->with_ended());
  auto notes = card.prostheses;
  notes.insert(notes.begin(), card.visit);
  notes.insert(notes.end(), card.bookings.begin(), card.bookings.end());
  notes.push_back(say("Use: {}", card.usage));
  notes.insert(notes.end(), card.sensitivities.begin(), card.sensitivities.end());
  notes.push_back(desk::care_caution());
  std::erase(notes, std::string{});
  auto list =
      shows(Pane::findings)
          ? desk::printed(findings_->table(), say("Findings"), say("Nothing was found."))
          : desk::printed(parts_->table(), say("Parts"), say("No part is recorded as in use."));
  return desk::printable_of(*day_, card.title, {std::move(list)}, std::move(notes));
}

}  // namespace sparewell::desktop
