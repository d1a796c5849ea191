/// Counting the shelf: which sheet to write, and the differences of one that was filled in.
#pragma once

#include "desk/list_jobs.hpp"
#include "desk/table.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class CountSheetDialog : public Form {
 public:
  CountSheetDialog(wxWindow* parent, std::vector<std::string> places);
  [[nodiscard]] desk::CountSheetWish wish() const;

 private:
  std::vector<std::string> places_;
  wxChoice* place_ = nullptr;
  wxChoice* most_ = nullptr;
  wxChoice* blind_ = nullptr;
};

class CountReviewDialog : public Form {
 public:
  CountReviewDialog(wxWindow* parent, const desk::CountReview& review, const std::string& who);
  [[nodiscard]] desk::CountBooking booking() const;

 private:
  desk::Table table_;
  wxTextCtrl* by_ = nullptr;
  wxChoice* moved_ = nullptr;  ///< nullptr when nothing moved
};

}  // namespace sparewell::desktop
