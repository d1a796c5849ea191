#include "desktop/pages/deliveries_panel.hpp"

#include <algorithm>

#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/wrapsizer.h>

#include "clinic/say.hpp"
#include "desk/revision_lines.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

DeliveriesPanel::DeliveriesPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                                 std::function<void()> changed, ReadRevisions revisions)
    : Page{parent},
      run_{std::move(run)},
      changed_{std::move(changed)},
      read_revisions_{std::move(revisions)},
      lines_{desk::DeliveriesPage::line_columns()},
      sent_{desk::revision_columns()} {
  auto* top = make_top();
  auto* split = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* orders = make_orders(split);
  auto* detail = make_detail(split);
  split->SplitVertically(orders, detail);
  share_room(*split, 0.46, "Deliveries");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(split, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
}

wxSizer* DeliveriesPanel::make_top() {
  find_ = new FindBox{this, said("Order, supplier, state or item"), said("Find an order"),
                      [this](const std::string& typed) {
                        page_.table().find(typed);
                        list_changed();
                      }};
  only_open_ = new wxCheckBox{this, wxID_ANY, said("Only &open orders")};
  only_open_->SetToolTip(said("Leave out what is received or cancelled"));
  only_open_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent& event) {
    page_.table().require(event.IsChecked() ? desk::DeliveriesPage::is_open : 0);
    list_changed();
  });
  remember_filter(*only_open_, "Only open orders");
  count_ = new wxStaticText{this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxALIGN_RIGHT};
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(12)));
  top->Add(only_open_, wxSizerFlags{1}.CentreVertical());
  top->Add(count_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* DeliveriesPanel::make_orders(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  orders_view_ = new TableView{panel, page_.table(), said("Orders")};
  orders_view_->set_empty_words(page_.empty_words());
  orders_view_->when_selected([this](const std::string& id) { show_order(id); });
  orders_view_->when_chosen([this](const std::string&) { run_(desk::Command::receive_delivery); });
  find_->goes_down_to(*orders_view_);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(orders_view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxBOTTOM, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

wxWindow* DeliveriesPanel::make_detail(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  title_ = new WrappedLabel{panel};
  title_->SetFont(title_->GetFont().Bold());
  summary_ = new WrappedLabel{panel};
  shown_row_ = make_shown(panel);
  lines_view_ = new TableView{panel, lines_, said("Lines of the order")};
  lines_view_->set_empty_words(said("No order is chosen."));
  sent_view_ = new TableView{panel, sent_, said("Lines of the revision"), Pick::none};
  sent_view_->set_empty_words(said("Nothing was left of the order."));
  sent_view_->Hide();
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(title_, inset);
  sizer->Add(summary_, inset);
  sizer->Add(shown_row_, inset);
  sizer->Add(lines_view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(sent_view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  sizer->Add(make_buttons(panel), wxSizerFlags{}.Expand().Border(wxALL, FromDIP(4)));
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, summary_}, FromDIP(20));
  return panel;
}

wxSizer* DeliveriesPanel::make_shown(wxWindow* parent) {
  auto* label = new wxStaticText{parent, wxID_ANY, said("Show&n:")};
  shown_ = new wxChoice{parent, wxID_ANY};
  shown_->SetMinSize({FromDIP(120), -1});
  set_accessible_name(*shown_, said("Shown revision"));
  shown_->SetToolTip(
      said("The order as it stands, or as it was sent earlier and what that changed"));
  shown_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { show_lines(); });
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(label, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  row->Add(shown_, wxSizerFlags{1}.CentreVertical());
  return row;
}

wxSizer* DeliveriesPanel::make_buttons(wxWindow* parent) {
  auto* row = new wxWrapSizer{wxHORIZONTAL, wxREMOVE_LEADING_SPACES};
  using desk::Command;
  for (const auto command :
       {Command::receive_delivery, Command::place_order, Command::approve_order,
        Command::amend_line, Command::back_order, Command::cancel_order, Command::reprint_order}) {
    auto* button = command_button(parent, command, run_);
    row->Add(button, wxSizerFlags{}.Border(wxALL, FromDIP(4)));
    buttons_.emplace_back(command, button);
  }
  return row;
}

const std::string& DeliveriesPanel::order() const {
  return orders_view_->selected();
}

const std::string& DeliveriesPanel::item() const {
  return lines_view_->selected();
}

void DeliveriesPanel::allow(const desk::CommandState& state) {
  for (const auto& [command, button] : buttons_) {
    button->Enable(desk::command_spec(command).enabled(state));
  }
}

void DeliveriesPanel::list_changed() {
  orders_view_->set_empty_words(page_.empty_words());
  orders_view_->table_changed();
  count_->SetLabelText(to_wx(page_.count_shown()));
  Layout();
}

void DeliveriesPanel::show(const desk::DayPtr& day) {
  day_ = day;
  page_.show(day);
  list_changed();
}

void DeliveriesPanel::choose(const desk::OrderName& order) {
  const auto id = page_.id_of(order);
  if (!page_.table().position_of(id)) {
    find_->ChangeValue("");
    only_open_->SetValue(false);
    page_.table().find("");
    page_.table().require(0);
    list_changed();
  }
  orders_view_->select(id);
  orders_view_->focus_rows();
}

void DeliveriesPanel::show_order(const std::string& id) {
  const auto detail = page_.detail(id);
  title_->set_text(detail.title);
  summary_->set_text(detail.summary);
  lines_.fill(detail.lines);
  lines_view_->table_changed();
  shown_->Clear();
  shown_->Append(said("As it stands now"));
  const auto revisions = page_.revisions(id);
  for (const auto& revision : revisions) shown_->Append(to_wx(revision));
  shown_->SetSelection(0);
  shown_row_->ShowItems(!revisions.empty());
  show_lines();
  changed_();
}

void DeliveriesPanel::show_lines() {
  const int chosen = shown_->GetSelection();
  const bool sent = chosen > 0;
  if (sent) {
    const auto kept = read_revisions_(page_.name(order()));
    // The choices are the latest first.
    const auto at = kept.size() - std::min(kept.size(), static_cast<std::size_t>(chosen));
    sent_.fill(at < kept.size() ? desk::revision_rows(desk::revision_lines(
                                      kept[at].lines, at == 0 ? nullptr : &kept[at - 1].lines))
                                : std::vector<desk::TableRow>{});
    sent_view_->table_changed();
  }
  lines_view_->Show(!sent);
  sent_view_->Show(sent);
  title_->GetParent()->Layout();
}

void DeliveriesPanel::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
