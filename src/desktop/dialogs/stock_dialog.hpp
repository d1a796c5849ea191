/// Asks what a piece of stock work needs to know, and books it.
#pragma once

#include <memory>
#include <vector>

#include "desk/stock_form.hpp"
#include "desktop/dialogs/draft_keeper.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

/// Stays open with what was typed until it has been booked or given up; a refusal is said in it.
class StockDialog : public Form {
 public:
  StockDialog(wxWindow* parent, desk::StockForm form, desk::ClinicFile file);
  /// What was booked; of use after wxID_OK.
  [[nodiscard]] const desk::Booked& booked() const { return booked_; }

 private:
  void on_ok(wxCommandEvent& event);
  void tell(const std::string& sentence);
  void offer_draft();
  [[nodiscard]] std::vector<std::string> answers() const;

  desk::StockForm form_;
  desk::ClinicFile file_;
  desk::Booked booked_;
  std::vector<wxWindow*> fields_;
  std::unique_ptr<DraftKeeper> draft_;
  wxStaticText* refusal_ = nullptr;
};

}  // namespace sparewell::desktop
