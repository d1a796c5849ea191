#include "desktop/dialogs/reactions_dialog.hpp"

#include "clinic/say.hpp"
#include "desktop/widgets/reactions_box.hpp"

namespace sparewell::desktop {
namespace {

constexpr int width = 900;
// All strips, or eight of them and the scroll bar.
constexpr int drawing_lines = 18;

}  // namespace

ReactionsDialog::ReactionsDialog(wxWindow* parent, const desk::ReactionsView& view)
    : Form{parent, said("Reactions and suspects"), view.intro} {
  auto* box = new ReactionsBox{this, 15, drawing_lines, width};
  box->show(view);
  add_wide(box, 1);
  finish(said("C&lose"), false);
  box->focus_words();
}

}  // namespace sparewell::desktop
