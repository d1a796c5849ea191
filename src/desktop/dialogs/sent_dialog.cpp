#include "desktop/dialogs/sent_dialog.hpp"

#include <wx/checklst.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {

SentDialog::SentDialog(wxWindow* parent, std::vector<desk::DraftOrder> drafts)
    : Form{parent, said("Mark as sent"),
           said("Tick the orders that went to their suppliers. From then on they count as on "
                "order. Orders that were only written do not count.")},
      drafts_{std::move(drafts)} {
  list_ = new wxCheckListBox{this, wxID_ANY};
  for (const auto& draft : drafts_) {
    const auto row = list_->Append(to_wx(desk::draft_words(draft)));
    list_->Check(static_cast<unsigned>(row));
  }
  set_accessible_name(*list_, said("Orders written and not yet sent"));
  list_->SetMinSize({FromDIP(560), FromDIP(180)});
  list_->SetToolTip(said("Space ticks and unticks an order"));
  add_wide(list_, 1);
  finish(said("&Mark as sent"));
}

std::vector<std::string> SentDialog::numbers() const {
  std::vector<std::string> ticked;
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    if (list_->IsChecked(static_cast<unsigned>(i))) ticked.push_back(drafts_[i].number);
  }
  return ticked;
}

}  // namespace sparewell::desktop
