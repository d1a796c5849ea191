#include "desktop/widgets/find_box.hpp"

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

FindBox::FindBox(wxWindow* parent, const std::string& hint, const std::string& name,
                 std::function<void(const std::string&)> typed)
    : wxSearchCtrl{parent, wxID_ANY}, hint_{hint}, typed_{std::move(typed)} {
  SetDescriptiveText(to_wx(hint));
  ShowCancelButton(true);
  SetToolTip(to_wx(hint));
  measure_again();
  set_accessible_name(*this, name, hint);
  Bind(wxEVT_TEXT, [this](wxCommandEvent&) { typed_(from_wx(GetValue())); });
  Bind(wxEVT_SEARCH_CANCEL, [this](wxCommandEvent&) { Clear(); });
  Bind(wxEVT_KEY_DOWN, &FindBox::on_key, this);
}

void FindBox::goes_down_to(TableView& list) {
  list_ = &list;
}

void FindBox::measure_again() {
  SetMinSize({GetTextExtent(to_wx(hint_)).x + FromDIP(70), -1});
}

void FindBox::take_focus() {
  SetFocus();
  SelectAll();
}

void FindBox::on_key(wxKeyEvent& event) {
  if (event.GetKeyCode() == WXK_ESCAPE && !GetValue().empty()) {
    Clear();
  } else if (event.GetKeyCode() == WXK_DOWN && list_) {
    list_->focus_rows();
  } else {
    event.Skip();
  }
}

}  // namespace sparewell::desktop
