#include "desktop/pages/shelf_panel.hpp"

#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/sizer.h>
#include <wx/splitter.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desktop/pages/shelf/course_pane.hpp"
#include "desktop/pages/shelf/moves_pane.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

ShelfPanel::ShelfPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                       std::function<void()> choice_changed)
    : Page{parent},
      run_{std::move(run)},
      choice_changed_{std::move(choice_changed)},
      lots_{desk::ShelfPage::lot_columns()},
      orders_{desk::ShelfPage::open_order_columns()},
      away_{desk::away_columns()} {
  auto* top = make_top();
  split_ = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* items = make_items(split_);
  auto* detail = make_detail(split_);
  split_->SplitHorizontally(items, detail);
  share_room(*split_, 0.38, "Shelf");
  moves_ = new MovesPane{this, run_, choice_changed_};
  moves_->Hide();
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(split_, wxSizerFlags{1}.Expand());
  sizer->Add(moves_, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
}

wxSizer* ShelfPanel::make_top() {
  find_ = new FindBox{this, said("Item, kind, material, lot or supplier"), said("Find an item"),
                      [this](const std::string& typed) {
                        page_.table().find(typed);
                        moves_->find(typed);
                        list_changed();
                      }};
  only_low_ = new wxCheckBox{this, wxID_ANY, said("Only what is &low")};
  only_low_->SetToolTip(said("Show items that are low, out or short"));
  only_low_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent& event) {
    page_.table().require(event.IsChecked() ? desk::ShelfPage::is_low : 0);
    list_changed();
  });
  remember_filter(*only_low_, "Only items that are low");
  moves_shown_ = new wxCheckBox{this, wxID_ANY, said("Moves &between branches")};
  const auto& spec = desk::command_spec(desk::Command::branch_moves);
  moves_shown_->SetToolTip(to_wx(tooltip_words(spec)));
  moves_shown_->Bind(wxEVT_CHECKBOX,
                     [this](wxCommandEvent& event) { show_moves(event.IsChecked()); });
  count_ = new wxStaticText{this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxALIGN_RIGHT};
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(12)));
  top->Add(only_low_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(12)));
  top->Add(moves_shown_, wxSizerFlags{}.CentreVertical());
  top->AddStretchSpacer(1);
  top->Add(count_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* ShelfPanel::make_items(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  items_view_ = new TableView{panel, page_.table(), said("Items")};
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
  course_ = new CoursePane{panel};
  auto* below = new wxBoxSizer{wxHORIZONTAL};
  below->Add(make_orders(panel), wxSizerFlags{1}.Expand().Border(wxRIGHT, FromDIP(8)));
  below->Add(make_away(panel), wxSizerFlags{1}.Expand());
  auto* right = new wxBoxSizer{wxVERTICAL};
  right->Add(make_lots(panel), wxSizerFlags{1}.Expand().Border(wxBOTTOM, FromDIP(8)));
  right->Add(below, wxSizerFlags{1}.Expand());
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(course_, wxSizerFlags{1}.Expand().Border(wxRIGHT, FromDIP(12)));
  row->Add(right, wxSizerFlags{1}.Expand());
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(title_, inset);
  sizer->Add(summary_, inset);
  sizer->Add(row, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, summary_}, FromDIP(20));
  return panel;
}

wxButton* ShelfPanel::make_button(wxWindow* parent, desk::Command command,
                                  const std::string& label) {
  auto* button = command_button(parent, command, run_, label);
  buttons_.push_back({command, button});
  return button;
}

wxSizer* ShelfPanel::make_lots(wxWindow* parent) {
  auto* lots = new wxBoxSizer{wxVERTICAL};
  lots->Add(section_heading(parent, said("Lots")), wxSizerFlags{}.Border(wxBOTTOM, FromDIP(4)));
  lots_view_ = new TableView{parent, lots_, said("Lots of the item")};
  lots_view_->set_empty_words(said("Nothing of it is on a shelf."));
  lots_view_->when_selected([this](const std::string&) { lot_changed(); });
  lots->Add(lots_view_, wxSizerFlags{1}.Expand().Border(wxBOTTOM, FromDIP(6)));
  using desk::Command;
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  const auto flags = wxSizerFlags{}.Border(wxRIGHT, FromDIP(6));
  row->Add(make_button(parent, Command::stock_move, said("&Move...")), flags);
  hold_back_ = make_button(parent, Command::stock_quarantine, said("&Quarantine..."));
  row->Add(hold_back_, flags);
  row->Add(make_button(parent, Command::stock_write_off, said("Wr&ite off...")), flags);
  row->Add(make_button(parent, Command::stock_return, said("&Return...")), flags);
  row->Add(make_button(parent, Command::stock_lend, said("Le&nd...")), flags);
  lots->Add(row);
  return lots;
}

wxSizer* ShelfPanel::make_orders(wxWindow* parent) {
  auto* orders = new wxBoxSizer{wxVERTICAL};
  orders->Add(section_heading(parent, said("Open orders")),
              wxSizerFlags{}.Border(wxBOTTOM, FromDIP(4)));
  orders_view_ = new TableView{parent, orders_, said("Open orders for the item"), Pick::none};
  orders_view_->set_empty_words(said("Nothing of it is on order."));
  orders->Add(orders_view_, wxSizerFlags{1}.Expand());
  return orders;
}

wxSizer* ShelfPanel::make_away(wxWindow* parent) {
  auto* away = new wxBoxSizer{wxVERTICAL};
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  away_title_ = section_heading(parent, said("Away, of all items"));
  away_view_ = new TableView{parent, away_, said("On loan, at suppliers and in transit")};
  away_view_->set_empty_words(said("Nothing is away."));
  away_view_->when_selected([this](const std::string&) { away_changed(); });
  away_view_->when_chosen([this](const std::string&) { run_(desk::Command::stock_settle); });
  settle_ = make_button(parent, desk::Command::stock_settle, said("Came &back..."));
  top->Add(away_title_, wxSizerFlags{1}.CentreVertical());
  top->Add(settle_, wxSizerFlags{}.CentreVertical());
  away->Add(top, wxSizerFlags{}.Expand().Border(wxBOTTOM, FromDIP(4)));
  away->Add(away_view_, wxSizerFlags{1}.Expand());
  return away;
}

const std::string& ShelfPanel::chosen_item() const {
  return items_view_->selected();
}

std::optional<StockLevel> ShelfPanel::chosen_lot() const {
  return page_.level(items_view_->selected(), lots_view_->selected());
}

std::optional<desk::Away> ShelfPanel::chosen_away() const {
  if (!day_) return std::nullopt;
  return desk::find_away(*day_, away_view_->selected());
}

const supply::RestockMove* ShelfPanel::chosen_move() const {
  return shows_moves() ? moves_->chosen() : nullptr;
}

bool ShelfPanel::shows_moves() const {
  return moves_->IsShown();
}

void ShelfPanel::show_moves(bool shown) {
  moves_shown_->SetValue(shown);
  only_low_->Enable(!shown);
  split_->Show(!shown);
  moves_->Show(shown);
  if (shown) {
    moves_->goes_down_from(*find_);
  } else {
    find_->goes_down_to(*items_view_);
  }
  say_count();
  Layout();
  choice_changed_();
}

void ShelfPanel::allow_work(const desk::CommandState& state) {
  for (const auto& [command, button] : buttons_) {
    button->Enable(desk::command_spec(command).enabled(state));
  }
  moves_->allow_sending(desk::command_spec(desk::Command::send_moves).enabled(state));
}

void ShelfPanel::lot_changed() {
  const auto lot = chosen_lot();
  const bool held_back =
      lot && sort_of_place(day_->clinic().places, lot->place) == PlaceSort::quarantine;
  hold_back_->SetLabel(held_back ? said("Rel&ease...") : said("&Quarantine..."));
  hold_back_->GetParent()->Layout();
  choice_changed_();
}

void ShelfPanel::away_changed() {
  settle_->SetLabel(to_wx(desk::away_action(chosen_away())));
  settle_->GetParent()->Layout();
  choice_changed_();
}

void ShelfPanel::list_changed() {
  items_view_->set_empty_words(page_.empty_words());
  items_view_->table_changed();
  say_count();
  Layout();
}

void ShelfPanel::say_count() {
  count_->SetLabelText(shows_moves() ? wxString{} : to_wx(page_.count_shown()));
}

void ShelfPanel::show(const desk::DayPtr& day) {
  day_ = day;
  page_.show(day);
  course_->show(day);
  away_.fill(desk::away_rows(*day));
  const auto sums = desk::credit_sum_words(*day);
  away_title_->SetLabelText(to_wx(sums.empty() ? std::string{said("Away, of all items")}
                                               : say("Away, of all items. {}", sums)));
  away_view_->table_changed();
  moves_->show(day);
  const auto proposed = day->restock().moves.size();
  moves_shown_->SetLabel(to_wx(say("Moves &between branches ({})", proposed)));
  moves_shown_->Show(day->branches().several());
  if (!day->branches().several() && shows_moves()) show_moves(false);
  list_changed();
}

void ShelfPanel::choose(const ItemCode& item, const std::string& lot) {
  show_moves(false);
  find_->Clear();
  only_low_->SetValue(false);
  page_.table().require(0);
  list_changed();
  items_view_->select(item.text);
  const auto row = page_.first_row_of(item.text, lot);
  if (row.empty()) return items_view_->focus_rows();
  lots_view_->select(row);
  lots_view_->focus_rows();
}

void ShelfPanel::choose_away(const std::string& row) {
  show_moves(false);
  away_view_->select(row);
  away_view_->focus_rows();
}

void ShelfPanel::show_item(const std::string& code) {
  const auto detail = page_.detail(code);
  title_->set_text(detail.title);
  summary_->set_text(detail.summary);
  course_->choose(code);
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
