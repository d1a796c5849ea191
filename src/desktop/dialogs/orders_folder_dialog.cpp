#include "desktop/dialogs/orders_folder_dialog.hpp"

#include <wx/filepicker.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {

OrdersFolderDialog::OrdersFolderDialog(wxWindow* parent, const std::string& folder)
    : Form{parent, said("Write order workbooks"),
           said("One workbook for each supplier is written into this folder; it is made when it is "
                "not there. The orders are kept as drafts until you mark them as sent.")} {
  folder_ = add_folder(said("&Folder"), folder, said("Where the workbooks are written"));
  finish(said("&Write"));
}

std::string OrdersFolderDialog::folder() const {
  // The picker's own value lags behind what is typed when the folder does not exist yet.
  return from_wx(folder_->GetTextCtrl()->GetValue());
}

}  // namespace sparewell::desktop
