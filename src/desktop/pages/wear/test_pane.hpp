/// On the page "Wear": how the forecasts did when they were tested.
#pragma once

#include <functional>
#include <string>

#include <wx/scrolwin.h>

#include "desk/wear_page.hpp"

namespace sparewell::desktop {

class ChartView;
class TableView;
class WrappedLabel;

class TestPane : public wxScrolledWindow {
 public:
  /// `page` must outlive the pane; `chosen` is called when a kind is chosen here.
  TestPane(wxWindow* parent, desk::WearPage& page, std::function<void(std::optional<Kind>)> chosen);

  /// After the page was given another test.
  void test_changed();
  /// After another kind was chosen.
  void kind_changed();

 private:
  wxWindow* make_result();

  desk::WearPage& page_;
  std::function<void(std::optional<Kind>)> chosen_call_;
  WrappedLabel* headline_ = nullptr;
  WrappedLabel* errors_ = nullptr;
  WrappedLabel* grounds_ = nullptr;
  wxWindow* result_ = nullptr;
  ChartView* chart_ = nullptr;
  TableView* scores_ = nullptr;
};

}  // namespace sparewell::desktop
