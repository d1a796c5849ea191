#include "desktop/dialogs/months_dialog.hpp"

#include <array>

#include <wx/choice.h>

#include "clinic/say.hpp"
#include "desk/papers/month_forecast.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::array<int, 5> spans{3, 6, 12, 18, 24};

}  // namespace

MonthsDialog::MonthsDialog(wxWindow* parent)
    : Form{parent, said("Forecast by month"),
           say("For each item the pieces that are expected month by month, those that suffice "
               "with 90 % chance, and what they will cost. {}",
               desk::forecast_caution())} {
  months_ = add_choice(
      said("&Months"),
      {said("3 months"), said("6 months"), said("12 months"), said("18 months"), said("24 months")},
      1, said("Full months after the current one"));
  finish(said("&Write..."));
}

int MonthsDialog::months() const {
  return spans.at(static_cast<std::size_t>(months_->GetSelection()));
}

}  // namespace sparewell::desktop
