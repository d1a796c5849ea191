/// The page "Today".
#pragma once

#include <functional>

#include "desk/today/today_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxChoice;
class wxStaticText;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class TodayPanel : public Page {
 public:
  /// `go` leads to where a row is done.
  TodayPanel(wxWindow* parent, std::function<void(const desk::Destination&)> go);

  /// Rows come with show_work.
  void show(const desk::DayPtr& day) override;
  void show_work(const desk::TodayWorkPtr& work);
  void show_books(desk::TodayPage::Books books, const desk::WorklistPtr& items);
  void find() override;
  void focus_rows();
  [[nodiscard]] std::string name() const override { return "today"; }
  [[nodiscard]] std::string tab() const override;

 private:
  wxSizer* make_top();
  wxWindow* make_list(wxWindow* parent);
  wxWindow* make_detail(wxWindow* parent);
  void rows_changed();
  void show_row(const std::string& id);
  void go_to_chosen();

  std::function<void(const desk::Destination&)> go_;
  desk::DayPtr day_;
  desk::TodayPage page_;
  WrappedLabel* headline_ = nullptr;
  FindBox* find_ = nullptr;
  wxChoice* work_ = nullptr;
  TableView* list_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* sentence_ = nullptr;
  WrappedLabel* help_ = nullptr;
  wxButton* act_ = nullptr;
};

}  // namespace sparewell::desktop
