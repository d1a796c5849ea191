/// Asks what a piece of stock work needs to know, and books it.
#pragma once

#include <vector>

#include "desk/stock_form.hpp"
#include "desktop/dialogs/asking_form.hpp"

namespace sparewell::desktop {

/// Stays open with what was typed until it has been booked or given up; a refusal is said in it.
class StockDialog : public AskingForm {
 public:
  StockDialog(wxWindow* parent, desk::StockForm form, desk::ClinicFile file);
  /// What was booked; of use after wxID_OK.
  [[nodiscard]] const desk::Booked& booked() const { return booked_; }

 private:
  std::string attempt();
  [[nodiscard]] std::vector<std::string> answers() const;

  desk::StockForm form_;
  desk::ClinicFile file_;
  desk::Booked booked_;
  std::vector<wxWindow*> fields_;
};

}  // namespace sparewell::desktop
