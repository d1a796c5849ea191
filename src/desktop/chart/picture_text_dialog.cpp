#include "desktop/chart/picture_text_dialog.hpp"

#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/picture/figure_table.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

PictureTextDialog::PictureTextDialog(wxWindow* parent, const picture::Picture& picture)
    : Form{wxGetTopLevelParent(parent), picture.title, {}},
      figures_{picture::as_list(picture.table)} {
  auto* words = new wxTextCtrl{this,
                               wxID_ANY,
                               to_wx(picture.words),
                               wxDefaultPosition,
                               wxSize{FromDIP(1000), 7 * GetCharHeight()},
                               wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*words, say("The picture in words"));
  add_wide(words, 1);
  auto* figures = new TableView{this, figures_, say("Figures of the picture"), Pick::none};
  figures->set_least_rows(8);
  figures->set_empty_words(say("The picture has no figures."));
  figures->table_changed();
  add_wide(figures, 3);
  finish(say("C&lose"), false);
  words->SetFocus();
}

}  // namespace sparewell::desktop
