#include "desktop/dialogs/fit_dialog.hpp"

#include <wx/choice.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/limb_view.hpp"

namespace sparewell::desktop {
namespace {

constexpr int pause_ms = 350;
constexpr int fit_width = 720;

}  // namespace

FitDialog::FitDialog(wxWindow* parent, const std::string& introduction,
                     const std::string& first_day, Answer answer)
    : Form{parent, said("Fit and trend"), introduction},
      answer_{std::move(answer)},
      shown_{answer_(first_day)} {
  by_ = add_text(said("B&y"), first_day, said("The day to look ahead to, such as 2027-05-26"));
  limb_ = add_choice(said("&Limb"), desk::limb_names(shown_), 0,
                     said("Side and height of the drawing"));
  view_ = new LimbView{this, 9, fit_width};
  add_wide(view_, 1);
  finish(said("C&lose"), false);
  pause_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { show_answer(); });
  by_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { pause_.StartOnce(pause_ms); });
  limb_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { show_curve(); });
  by_->SetFocus();
  show_answer();
}

void FitDialog::show_answer() {
  shown_ = answer_(from_wx(by_->GetValue().Strip(wxString::both)));
  view_->show(shown_);
  show_curve();
}

void FitDialog::show_curve() {
  view_->choose(limb_->GetSelection());
}

}  // namespace sparewell::desktop
