#include <fmt/format.h>

#include "desk/stock_words.hpp"
#include "desktop/dialogs/stock_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

void MainFrame::work_on_lot(desk::LotAction action) {
  if (const auto level = shelf_->chosen_lot()) book(desk::lot_form(action, *day_, *level));
}

void MainFrame::settle_away() {
  if (const auto away = shelf_->chosen_away()) book(desk::away_form(*day_, *away));
}

void MainFrame::book(const desk::StockForm& form) {
  StockDialog dialog{this, form, file_};
  if (dialog.ShowModal() != wxID_OK) return;
  note_->say(fmt::format("{}", fmt::join(desk::booked_lines(dialog.booked()), "\n")), {});
  read_again();
}

}  // namespace sparewell::desktop
