#include "desktop/pages/patient/patient_pane.hpp"

namespace sparewell::desktop {

void PatientPane::about(ChosenPatientPtr chosen) {
  chosen_ = std::move(chosen);
  filled_ = false;
}

void PatientPane::come_into_sight() {
  if (filled_ || !chosen_) return;
  filled_ = true;
  fill(*chosen_);
  Layout();
}

}  // namespace sparewell::desktop
