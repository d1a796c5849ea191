/// The page "Plan": panes that look ahead at how the clinic orders.
#pragma once

#include <functional>

#include "desk/plan_page.hpp"
#include "desk/what_if_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxChoice;
class wxNotebook;

namespace sparewell::desktop {

class PlayPane;
class WhatIfPane;

class PlanPanel : public Page {
 public:
  /// In the order of their tabs.
  enum class Pane { play, what_if };

  /// `play` starts a play of the order policy, `compare` a comparison of decisions.
  PlanPanel(wxWindow* parent, std::function<void()> play, std::function<void()> compare);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string tab() const override { return "Plan"; }
  void show_play(const desk::PolicyPlayPtr& play);
  void allow_playing(bool allowed);
  [[nodiscard]] desk::WhatIfQuestions questions() const;
  void show_compared(const std::vector<desk::Compared>& compared);
  void allow_comparing(bool allowed);
  void open(Pane pane);

 private:
  wxNotebook* panes_ = nullptr;
  PlayPane* play_pane_ = nullptr;
  WhatIfPane* what_if_pane_ = nullptr;
};

}  // namespace sparewell::desktop
