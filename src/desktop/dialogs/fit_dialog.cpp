#include "desktop/dialogs/fit_dialog.hpp"

#include <wx/choice.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/picture/limb_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

constexpr int pause_ms = 350;
constexpr int width = 720;

}  // namespace

FitDialog::FitDialog(wxWindow* parent, const std::string& introduction,
                     const std::string& first_day, Answer answer)
    : Form{parent, "Fit and trend", introduction},
      answer_{std::move(answer)},
      shown_{answer_(first_day)} {
  by_ = add_text("&By", first_day, "The day to look ahead to, such as 2027-05-26");
  limb_ = add_choice("&Limb", desk::limb_names(shown_), 0, "Side and height of the drawing");
  chart_ = new ChartView{this, say("Circumference over time, drawn")};
  chart_->set_least_height(16);
  add_wide(chart_, 3);
  told_ = new wxTextCtrl{this,
                         wxID_ANY,
                         "",
                         wxDefaultPosition,
                         wxSize(FromDIP(width), 9 * GetCharHeight()),
                         wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*told_, "Fit and trend in words");
  add_wide(told_, 2);
  finish("C&lose", false);
  pause_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { show_answer(); });
  by_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { pause_.StartOnce(pause_ms); });
  limb_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { show_curve(); });
  by_->SetFocus();
  show_answer();
}

void FitDialog::show_answer() {
  shown_ = answer_(from_wx(by_->GetValue().Strip(wxString::both)));
  told_->ChangeValue(to_wx(shown_.words));
  show_curve();
}

void FitDialog::show_curve() {
  const auto chosen = static_cast<std::size_t>(std::max(0, limb_->GetSelection()));
  chart_->show(desk::limb_picture(
      chosen < shown_.curves.size() ? std::optional{shown_.curves[chosen]} : std::nullopt,
      shown_.reference));
}

}  // namespace sparewell::desktop
