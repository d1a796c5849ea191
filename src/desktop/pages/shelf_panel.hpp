/// The page "Shelf".
#pragma once

#include "desk/shelf_page.hpp"
#include "desktop/pages/page.hpp"

class wxCheckBox;
class wxStaticText;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class ShelfPanel : public Page {
 public:
  explicit ShelfPanel(wxWindow* parent);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string tab() const override { return "Shelf"; }

 private:
  wxSizer* make_top();
  wxWindow* make_items(wxWindow* parent);
  wxWindow* make_detail(wxWindow* parent);
  void list_changed();
  void show_item(const std::string& code);

  desk::ShelfPage page_;
  desk::Table lots_;
  desk::Table orders_;
  FindBox* find_ = nullptr;
  wxCheckBox* only_low_ = nullptr;
  wxStaticText* count_ = nullptr;
  TableView* items_view_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* summary_ = nullptr;
  TableView* lots_view_ = nullptr;
  TableView* orders_view_ = nullptr;
};

}  // namespace sparewell::desktop
