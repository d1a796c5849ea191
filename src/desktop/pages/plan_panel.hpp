/// The page "Plan": panes that look ahead at how the clinic orders.
#pragma once

#include <functional>

#include "desk/plan_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxChoice;
class wxNotebook;

namespace sparewell::desktop {

class PlayPane;

class PlanPanel : public Page {
 public:
  /// In the order of their tabs.
  enum class Pane { play };

  /// `play` starts a play of the order policy.
  PlanPanel(wxWindow* parent, std::function<void()> play);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string tab() const override { return "Plan"; }
  void show_play(const desk::PolicyPlayPtr& play);
  void allow_playing(bool allowed);
  void open(Pane pane);

 private:
  wxNotebook* panes_ = nullptr;
  PlayPane* play_pane_ = nullptr;
};

}  // namespace sparewell::desktop
