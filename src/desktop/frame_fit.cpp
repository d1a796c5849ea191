#include "desk/fit_form.hpp"
#include "desk/measuring.hpp"
#include "desktop/dialogs/fit_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/patient_panel.hpp"

namespace sparewell::desktop {

void MainFrame::record_measurement() {
  book(desk::measurement_form(*day_, {patients_->chosen_patient()}));
}

void MainFrame::show_fit() {
  const PatientRef patient{patients_->chosen_patient()};
  FitDialog{this, desk::fit_introduction(*day_, patient), desk::fit_first_day(*day_),
            [this, patient](const std::string& by) { return desk::show_fit(*day_, patient, by); }}
      .ShowModal();
}

}  // namespace sparewell::desktop
