#include "desktop/dialogs/help_window.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/billing_panel.hpp"
#include "desktop/pages/deliveries_panel.hpp"
#include "desktop/pages/order_panel.hpp"
#include "desktop/pages/patient_panel.hpp"
#include "desktop/pages/shelf_panel.hpp"
#include "desktop/printing/table_printout.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/note_bar.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/text_size.hpp"
#include "desktop/widgets/work_bar.hpp"

namespace sparewell::desktop {
namespace {

void use_usual_columns_in(wxWindow& window) {
  if (auto* table = dynamic_cast<TableView*>(&window)) return table->use_usual_columns();
  for (auto* child : window.GetChildren()) use_usual_columns_in(*child);
}

}  // namespace

void MainFrame::use_usual_columns() {
  window_layout().tables.clear();
  use_usual_columns_in(*this);
}

void MainFrame::change_text_size(int steps) {
  auto& percent = window_layout().text_percent;
  percent = desk::text_size(percent, steps);
  apply_text_size(percent);
  bar_->idle(desk::text_size_words(percent));
  // The toolkit gives its controls the new size in its own time, and says not when.
  CallAfter([this] { measure_again(*this); });
  later_.StartOnce(250);
}

void MainFrame::print_page() {
  if (auto list = current_page()->printable()) preview_print(this, *list);
}

void MainFrame::show_help() {
  const Page* page = day_ ? current_page() : nullptr;
  const std::string about = page == nullptr       ? "import"
                            : page == patients_   ? "patients"
                            : page == shelf_      ? "receiving"
                            : page == deliveries_ ? "receiving"
                            : page == billing_    ? "billing"
                            : page == orders_     ? "ordering"
                            : page == plan_       ? "ordering"
                                                  : "window";
  // It belongs to the frame and goes with it.
  static constexpr auto name = "Help";
  auto* window = dynamic_cast<HelpWindow*>(wxWindow::FindWindowByName(name, this));
  if (window == nullptr) {
    window = new HelpWindow{this};
    window->SetName(name);
  }
  window->open(about);
}

}  // namespace sparewell::desktop
