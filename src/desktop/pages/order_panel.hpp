/// The page "Order today".
#pragma once

#include <functional>
#include <optional>

#include "desk/commands.hpp"
#include "desk/order_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxSplitterWindow;
class wxStaticText;
class wxTextCtrl;

namespace sparewell::desktop {

class FindBox;
class SliderStrip;
class TableView;
class WrappedLabel;

class OrderPanel : public Page {
 public:
  /// `run` does a command; `keep_to` works today's orders out within a budget, or without one.
  OrderPanel(wxWindow* parent, std::function<void(desk::Command)> run,
             std::function<void(const std::optional<Money>&)> keep_to);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string name() const override { return "orders"; }
  [[nodiscard]] std::string tab() const override;
  [[nodiscard]] std::optional<desk::Printable> printable() const override;
  /// Shows the line of this item, whatever was searched before; of "" the list.
  void choose(const ItemCode& item);
  void allow_writing(bool allowed);
  void allow_budget(bool allowed);
  [[nodiscard]] bool anything() const { return page_.anything(); }

 private:
  wxSizer* make_top(const std::function<void(desk::Command)>& run);
  wxWindow* make_lines(wxWindow* parent);
  wxWindow* make_below(wxWindow* parent);
  wxWindow* make_reason(wxWindow* parent);
  void show_below(bool any);
  void show_otherwise();
  void show_line(const std::string& id);

  desk::DayPtr day_;
  desk::OrderPage page_;
  desk::Table totals_;
  desk::Table needs_;
  desk::Table compared_;
  SliderStrip* strip_ = nullptr;
  wxSplitterWindow* split_ = nullptr;
  wxWindow* above_ = nullptr;
  wxWindow* below_ = nullptr;
  wxStaticText* headline_ = nullptr;
  wxButton* write_ = nullptr;
  wxButton* held_ = nullptr;
  FindBox* find_ = nullptr;
  TableView* lines_ = nullptr;
  wxStaticText* totals_heading_ = nullptr;
  TableView* totals_view_ = nullptr;
  TableView* compared_view_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* when_ = nullptr;
  wxTextCtrl* why_ = nullptr;
  TableView* needs_view_ = nullptr;
};

}  // namespace sparewell::desktop
