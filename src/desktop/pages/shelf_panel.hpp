/// The page "Shelf".
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "clinic/say.hpp"
#include "desk/away_rows.hpp"
#include "desk/commands.hpp"
#include "desk/restock_rows.hpp"
#include "desk/shelf_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxCheckBox;
class wxSplitterWindow;
class wxStaticText;

namespace sparewell::desktop {

class CoursePane;
class FindBox;
class MovesPane;
class TableView;
class WrappedLabel;

class ShelfPanel : public Page {
 public:
  /// `run` carries a command out; `choice_changed` is called when another lot is chosen, or
  /// another row of what is away.
  ShelfPanel(wxWindow* parent, std::function<void(desk::Command)> run,
             std::function<void()> choice_changed);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string name() const override { return "shelf"; }
  [[nodiscard]] std::string tab() const override { return said("Shelf"); }
  [[nodiscard]] std::optional<desk::Printable> printable() const override;

  /// Shows this item, and its lot where one is named, whatever was searched before.
  void choose(const ItemCode& item, const std::string& lot);
  /// Shows a loan, a return or a transfer, by the id of its row; see desk::away_rows.
  void choose_away(const std::string& row);
  /// "" when none is.
  [[nodiscard]] const std::string& chosen_item() const;
  [[nodiscard]] std::optional<StockLevel> chosen_lot() const;
  [[nodiscard]] std::optional<desk::Away> chosen_away() const;
  /// The proposed move between branches; nullptr when none is, or the items are shown.
  [[nodiscard]] const supply::RestockMove* chosen_move() const;
  /// Shows the moves between branches in place of the items, or the items again.
  void show_moves(bool shown);
  [[nodiscard]] bool shows_moves() const;
  void allow_work(const desk::CommandState& state);

 protected:
  [[nodiscard]] bool shows_records() const override { return true; }

 private:
  wxSizer* make_top();
  wxWindow* make_items(wxWindow* parent);
  wxWindow* make_detail(wxWindow* parent);
  wxSizer* make_lots(wxWindow* parent);
  wxSizer* make_orders(wxWindow* parent);
  wxSizer* make_away(wxWindow* parent);
  wxButton* make_button(wxWindow* parent, desk::Command command, const std::string& label);
  void list_changed();
  void say_count();
  void show_item(const std::string& code);
  void lot_changed();
  void away_changed();

  std::function<void(desk::Command)> run_;
  std::function<void()> choice_changed_;
  desk::DayPtr day_;
  desk::ShelfPage page_;
  desk::Table lots_;
  desk::Table orders_;
  desk::Table away_;
  FindBox* find_ = nullptr;
  wxCheckBox* only_low_ = nullptr;
  wxCheckBox* moves_shown_ = nullptr;
  wxStaticText* count_ = nullptr;
  wxSplitterWindow* split_ = nullptr;
  MovesPane* moves_ = nullptr;
  TableView* items_view_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* summary_ = nullptr;
  CoursePane* course_ = nullptr;
  TableView* lots_view_ = nullptr;
  TableView* orders_view_ = nullptr;
  TableView* away_view_ = nullptr;
  wxStaticText* away_title_ = nullptr;
  wxButton* hold_back_ = nullptr;
  wxButton* settle_ = nullptr;
  struct CommandButton {
    desk::Command command;
    wxButton* button;
  };
  std::vector<CommandButton> buttons_;
};

}  // namespace sparewell::desktop
