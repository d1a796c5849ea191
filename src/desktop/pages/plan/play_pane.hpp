/// On the page "Plan": the order policy played beside common ways of ordering.
#pragma once

#include <functional>

#include <wx/scrolwin.h>

#include "desk/plan_page.hpp"

class wxButton;
class wxChoice;
class wxSizer;

namespace sparewell::desktop {

class ChartView;
class TableView;
class WrappedLabel;

class PlayPane : public wxScrolledWindow {
 public:
  /// `play` starts a play.
  PlayPane(wxWindow* parent, std::function<void()> play);

  void show_play(const desk::PolicyPlayPtr& play);
  void allow_playing(bool allowed);
  void focus_rows();

 private:
  wxSizer* make_top(std::function<void()> play);
  wxWindow* make_result();
  void choice_changed();

  desk::PlanPage page_;
  wxChoice* choices_ = nullptr;
  wxButton* play_ = nullptr;
  WrappedLabel* headline_ = nullptr;
  WrappedLabel* by_cost_ = nullptr;
  WrappedLabel* grounds_ = nullptr;
  wxWindow* result_ = nullptr;
  ChartView* chart_ = nullptr;
  TableView* runs_ = nullptr;
};

}  // namespace sparewell::desktop
