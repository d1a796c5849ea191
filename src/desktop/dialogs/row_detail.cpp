#include "desktop/dialogs/row_detail.hpp"

#include <wx/panel.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/row_words.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

wxWindow* make_row_detail(wxWindow* parent, desk::Table& table, const std::string& name,
                          const std::string& empty_words) {
  auto* panel = new wxPanel{parent};
  auto* list = new TableView{panel, table, name};
  list->set_least_rows(9);
  list->SetMinSize({panel->FromDIP(1060), panel->FromDIP(280)});
  list->set_empty_words(empty_words);
  auto* detail = new wxTextCtrl{
      panel, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_MULTILINE | wxTE_READONLY};
  detail->SetMinSize({-1, 5 * panel->GetCharHeight()});
  set_accessible_name(*detail, said("The selected row in full"));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(list, wxSizerFlags{1}.Expand());
  sizer->Add(detail, wxSizerFlags{}.Expand().Border(wxTOP, panel->FromDIP(8)));
  panel->SetSizer(sizer);
  list->when_selected([detail, &table](const std::string& id) {
    detail->ChangeValue(to_wx(desk::row_words(table, id)));
  });
  list->table_changed();
  return panel;
}

}  // namespace sparewell::desktop
