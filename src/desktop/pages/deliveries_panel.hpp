/// The page "Deliveries".
#pragma once

#include <functional>
#include <utility>
#include <vector>

#include "clinic/say.hpp"
#include "desk/commands.hpp"
#include "desk/deliveries_page.hpp"
#include "desk/order_revisions.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxCheckBox;
class wxChoice;
class wxStaticText;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class DeliveriesPanel : public Page {
 public:
  using ReadRevisions = std::function<std::vector<desk::KeptRevision>(const desk::OrderName&)>;

  /// `run` does a command; `changed` is called when another order has been chosen; `revisions`
  /// reads what was sent of an order.
  DeliveriesPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                  std::function<void()> changed, ReadRevisions revisions);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string name() const override { return "deliveries"; }
  [[nodiscard]] std::string tab() const override { return said("Deliveries"); }
  [[nodiscard]] std::optional<desk::Printable> printable() const override;

  /// Shows this order, whatever was asked for before.
  void choose(const desk::OrderName& order);
  [[nodiscard]] const desk::DeliveriesPage& page() const { return page_; }
  /// The id of the chosen order; "" for none.
  [[nodiscard]] const std::string& order() const;
  /// The item of the chosen line; "" for none.
  [[nodiscard]] const std::string& item() const;
  [[nodiscard]] desk::OrderActions actions() const { return page_.actions(order()); }
  void allow(const desk::CommandState& state);

 protected:
  [[nodiscard]] bool shows_records() const override { return true; }

 private:
  wxSizer* make_top();
  wxWindow* make_orders(wxWindow* parent);
  wxWindow* make_detail(wxWindow* parent);
  wxSizer* make_buttons(wxWindow* parent);
  void list_changed();
  void show_order(const std::string& id);
  wxSizer* make_shown(wxWindow* parent);
  /// The lines as they stand, or those of an earlier revision, as `shown_` says.
  void show_lines();

  std::function<void(desk::Command)> run_;
  std::function<void()> changed_;
  desk::DayPtr day_;
  desk::DeliveriesPage page_;
  ReadRevisions read_revisions_;
  desk::Table lines_;
  desk::Table sent_;
  FindBox* find_ = nullptr;
  wxCheckBox* only_open_ = nullptr;
  wxStaticText* count_ = nullptr;
  TableView* orders_view_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* summary_ = nullptr;
  wxSizer* shown_row_ = nullptr;
  wxChoice* shown_ = nullptr;
  TableView* lines_view_ = nullptr;
  TableView* sent_view_ = nullptr;
  std::vector<std::pair<desk::Command, wxButton*>> buttons_;
};

}  // namespace sparewell::desktop
