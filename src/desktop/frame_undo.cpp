#include "clinic/say.hpp"
#include "desk/clinic_jobs.hpp"
#include "desk/describe_failure.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

std::vector<Reservation> MainFrame::visit_bookings() const {
  return aside([file = file_] { return desk::bookings_now(*desk::open_store(file)->read()); });
}

void MainFrame::note_done(std::optional<desk::UndoStep> step, const std::string& what) {
  if (step) {
    undo_.did(std::move(*step));
  } else {
    undo_.did_for_good(what);
  }
}

void MainFrame::note_done(const desk::StockForm& form, const desk::Booked& booked,
                          const std::vector<Reservation>& before) {
  auto step = aside([file = file_, &booked, &before] {
    const auto store = desk::open_store(file);
    const auto snapshot = store->read();
    auto found = desk::undo_movements(*snapshot, booked);
    return found ? found : desk::undo_bookings(before, desk::bookings_now(*snapshot));
  });
  note_done(std::move(step), said(form.why.c_str()));
}

void MainFrame::say_done(const std::string& text) {
  std::vector<NoteBar::Action> actions;
  if (undo_.can_undo()) {
    actions.push_back({said("Undo"), [this] { run(desk::Command::undo); }});
  }
  note_->say(text, actions);
}

void MainFrame::undo() {
  try {
    auto steps = undo_;
    const auto undone = aside([&steps, file = file_] {
      return steps.undo(*desk::open_store(file), file.today, file.who);
    });
    undo_ = std::move(steps);
    note_->say(undone ? *undone : undone.error().sentence, {});
    if (undone) read_again();
  } catch (...) {
    note_->say(desk::describe_failure(std::current_exception()), {});
  }
}

}  // namespace sparewell::desktop
