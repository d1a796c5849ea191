#include <fmt/format.h>

#include "desk/describe_failure.hpp"
#include "desk/stock_words.hpp"
#include "desktop/dialogs/stock_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::work_on_lot(desk::LotAction action) {
  if (const auto level = shelf_->chosen_lot()) book(desk::lot_form(action, *day_, *level));
}

void MainFrame::settle_away() {
  if (const auto away = shelf_->chosen_away()) book(desk::away_form(*day_, *away));
}

void MainFrame::show_branch_moves() {
  const bool there = current_page() == shelf_ && shelf_->shows_moves();
  go_to(*shelf_);
  shelf_->show_moves(!there);
  shelf_->find();
}

void MainFrame::send_moves() {
  if (const auto* move = shelf_->chosen_move()) book(desk::send_form(*day_, *move));
}

void MainFrame::take_back() {
  try {
    const auto form = aside([file = file_, item = ItemCode{shelf_->chosen_item()}] {
      return desk::reversal_form(file, item);
    });
    if (form) return book(*form);
    note_->say(form.error().sentence, {});
  } catch (...) {
    note_->say(desk::describe_failure(std::current_exception()), {});
  }
}

void MainFrame::book(const desk::StockForm& form) {
  const auto before = visit_bookings();
  StockDialog dialog{this, form, file_};
  if (dialog.ShowModal() != wxID_OK) return;
  note_done(form, dialog.booked(), before);
  say_done(fmt::format("{}", fmt::join(desk::booked_lines(dialog.booked()), "\n")));
  read_again();
}

}  // namespace sparewell::desktop
