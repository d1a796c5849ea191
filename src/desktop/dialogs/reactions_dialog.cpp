#include "desktop/dialogs/reactions_dialog.hpp"

#include <algorithm>

#include <wx/textctrl.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/worn_chart.hpp"

namespace sparewell::desktop {
namespace {

constexpr int width = 900;

}  // namespace

ReactionsDialog::ReactionsDialog(wxWindow* parent, const desk::ReactionsView& view)
    : Form{parent, "Reactions and suspects", view.intro} {
  auto* chart = new WornChart{this, view.chart};
  const int rows = std::clamp(static_cast<int>(view.chart.strips.size()), 3, 8);
  chart->SetMinSize({FromDIP(width), (rows + 3) * (GetCharHeight() + FromDIP(8))});
  add_wide(chart, 1);
  auto* told = new wxTextCtrl{this,
                              wxID_ANY,
                              to_wx(view.text),
                              wxDefaultPosition,
                              wxSize(FromDIP(width), 15 * GetCharHeight()),
                              wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*told, "What the reactions speak for, and the log");
  add_wide(told, 1);
  finish("C&lose", false);
  told->SetFocus();
}

}  // namespace sparewell::desktop
