/// Asks how far a forecast by month looks ahead.
#pragma once

#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class MonthsDialog : public Form {
 public:
  explicit MonthsDialog(wxWindow* parent);
  [[nodiscard]] int months() const;

 private:
  wxChoice* months_ = nullptr;
};

}  // namespace sparewell::desktop
