#include "desktop/pages/shelf_panel.hpp"

#include <wx/checkbox.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "desktop/text.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

ShelfPanel::ShelfPanel(wxWindow* parent)
    : Page{parent},
      lots_{desk::ShelfPage::lot_columns()},
      orders_{desk::ShelfPage::open_order_columns()} {
  auto* top = make_top();
  auto* split = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* items = make_items(split);
  auto* detail = make_detail(split);
  split->SplitHorizontally(items, detail);
  share_room(*split, 0.62);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(split, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
}

wxSizer* ShelfPanel::make_top() {
  find_ = new FindBox{this, "Item, kind, material, lot or supplier", "Find an item",
                      [this](const std::string& typed) {
                        page_.table().find(typed);
                        list_changed();
                      }};
  only_low_ = new wxCheckBox{this, wxID_ANY, "Only what is &low"};
  only_low_->SetToolTip("Show items that are low, out or short");
  only_low_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent& event) {
    page_.table().require(event.IsChecked() ? desk::ShelfPage::is_low : 0);
    list_changed();
  });
  count_ = new wxStaticText{this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxALIGN_RIGHT};
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(12)));
  top->Add(only_low_, wxSizerFlags{1}.CentreVertical());
  top->Add(count_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* ShelfPanel::make_items(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  items_view_ = new TableView{panel, page_.table(), "Items"};
  items_view_->set_empty_words(page_.empty_words());
  items_view_->when_selected([this](const std::string& code) { show_item(code); });
  find_->goes_down_to(*items_view_);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(items_view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* ShelfPanel::make_detail(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  title_ = new WrappedLabel{panel};
  title_->SetFont(title_->GetFont().Bold());
  summary_ = new WrappedLabel{panel};
  lots_view_ = new TableView{panel, lots_, "Lots of the item", Pick::none};
  lots_view_->set_empty_words("Nothing of it is on a shelf.");
  orders_view_ = new TableView{panel, orders_, "Open orders for the item", Pick::none};
  orders_view_->set_empty_words("Nothing of it is on order.");
  auto* lots = new wxBoxSizer{wxVERTICAL};
  lots->Add(section_heading(panel, "Lots"), wxSizerFlags{}.Border(wxBOTTOM, FromDIP(4)));
  lots->Add(lots_view_, wxSizerFlags{1}.Expand());
  auto* orders = new wxBoxSizer{wxVERTICAL};
  orders->Add(section_heading(panel, "Open orders"), wxSizerFlags{}.Border(wxBOTTOM, FromDIP(4)));
  orders->Add(orders_view_, wxSizerFlags{1}.Expand());
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(lots, wxSizerFlags{1}.Expand().Border(wxRIGHT, FromDIP(12)));
  row->Add(orders, wxSizerFlags{1}.Expand());
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(title_, inset);
  sizer->Add(summary_, inset);
  sizer->Add(row, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, summary_}, FromDIP(20));
  return panel;
}

void ShelfPanel::list_changed() {
  items_view_->set_empty_words(page_.empty_words());
  items_view_->table_changed();
  count_->SetLabelText(to_wx(page_.count_shown()));
  Layout();
}

void ShelfPanel::show(const desk::DayPtr& day) {
  page_.show(day);
  list_changed();
}

void ShelfPanel::show_item(const std::string& code) {
  const auto detail = page_.detail(code);
  title_->set_text(detail.title);
  summary_->set_text(detail.summary);
  lots_.fill(detail.lots);
  lots_view_->table_changed();
  orders_.fill(detail.open_orders);
  orders_view_->table_changed();
  title_->GetParent()->Layout();
}

void ShelfPanel::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
