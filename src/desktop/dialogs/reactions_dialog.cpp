#include "desktop/dialogs/reactions_dialog.hpp"

#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/picture/worn_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

constexpr int width = 900;

}  // namespace

ReactionsDialog::ReactionsDialog(wxWindow* parent, const desk::ReactionsView& view)
    : Form{parent, "Reactions and suspects", view.intro} {
  auto* chart = new ChartView{this, say("What was worn, and reactions, drawn")};
  // All strips, or eight of them and the scroll bar.
  chart->grow_with_picture(18);
  chart->show(desk::worn_picture(view.chart, view.reference));
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
