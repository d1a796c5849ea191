#include "desktop/dialogs/months_dialog.hpp"

#include <array>

#include <fmt/format.h>
#include <wx/choice.h>

#include "desk/papers/month_forecast.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::array<int, 5> spans{3, 6, 12, 18, 24};

}  // namespace

MonthsDialog::MonthsDialog(wxWindow* parent)
    : Form{parent, "Forecast by month",
           fmt::format(
               "For each item the pieces that are expected month by month, those that suffice "
               "with 90 % chance, and what they will cost. {}",
               desk::forecast_caution())} {
  months_ = add_choice("&Months", {"3 months", "6 months", "12 months", "18 months", "24 months"},
                       1, "Full months after the current one");
  finish("&Write...");
}

int MonthsDialog::months() const {
  return spans.at(static_cast<std::size_t>(months_->GetSelection()));
}

}  // namespace sparewell::desktop
