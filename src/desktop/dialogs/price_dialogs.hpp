/// A supplier's price list: whose it is and how it is written, and what it changes.
#pragma once

#include "desk/prices/price_update.hpp"
#include "desk/table.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class PriceListDialog : public Form {
 public:
  PriceListDialog(wxWindow* parent, const std::string& file, std::vector<std::string> suppliers);
  [[nodiscard]] const desk::PriceListRequest& request() const { return request_; }

 private:
  /// Keeps the dialog open, and says why, when what was entered cannot be used.
  void on_ok(wxCommandEvent& event);

  std::vector<std::string> suppliers_;
  desk::PriceListRequest request_;
  wxChoice* supplier_ = nullptr;
  wxTextCtrl* sheet_ = nullptr;
  wxTextCtrl* headings_ = nullptr;
  wxChoice* separator_ = nullptr;
  wxChoice* decimal_ = nullptr;
  wxChoice* descriptions_ = nullptr;
};

class PriceReviewDialog : public Form {
 public:
  PriceReviewDialog(wxWindow* parent, const desk::PriceListOutcome& outcome);
  [[nodiscard]] desk::PriceAcceptance acceptance() const;

 private:
  desk::Table table_;
  wxChoice* doubtful_ = nullptr;  ///< nullptr when nothing is doubtful
};

}  // namespace sparewell::desktop
