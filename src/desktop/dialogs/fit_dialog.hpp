/// How a patient's limbs change, and until when the sizes worn fit.
#pragma once

#include <functional>
#include <string>

#include <wx/timer.h>

#include "desk/fit_form.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class LimbView;

/// Words and drawing follow the day that is typed; nothing is recorded.
class FitDialog : public Form {
 public:
  using Answer = std::function<desk::FitShown(const std::string& by)>;
  FitDialog(wxWindow* parent, const std::string& introduction, const std::string& first_day,
            Answer answer);

 private:
  void show_answer();
  void show_curve();

  Answer answer_;
  desk::FitShown shown_;
  wxTextCtrl* by_ = nullptr;
  wxChoice* limb_ = nullptr;
  LimbView* view_ = nullptr;
  wxTimer pause_;  ///< the answer follows when typing rests
};

}  // namespace sparewell::desktop
