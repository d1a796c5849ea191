/// The page "Plan": panes that look ahead at how the clinic orders.
#pragma once

#include <functional>
#include <optional>

#include "clinic/say.hpp"
#include "desk/plan_page.hpp"
#include "desk/suppliers_page.hpp"
#include "desk/what_if_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxChoice;
class wxNotebook;

namespace sparewell::desktop {

class HeldPane;
class PlayPane;
class SuppliersPane;
class WhatIfPane;

class PlanPanel : public Page {
 public:
  /// In the order of their tabs.
  enum class Pane { play, what_if, held, suppliers };

  struct Actions {
    std::function<void()> play;     ///< starts a play of the order policy
    std::function<void()> compare;  ///< starts a comparison of decisions
    /// Works today's orders out within a budget, or without one.
    std::function<void(const std::optional<Money>&)> keep_to;
    std::function<void(std::size_t)> go_to_unit;  ///< by its position in Clinic::units
    std::function<void(const desk::SuppliersPage::OrderOf&)> go_to_order;
  };

  PlanPanel(wxWindow* parent, Actions actions);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string name() const override { return "plan"; }
  [[nodiscard]] std::string tab() const override { return said("Plan"); }
  void show_play(const desk::PolicyPlayPtr& play);
  void allow_playing(bool allowed);
  [[nodiscard]] desk::WhatIfQuestions questions() const;
  void show_compared(const std::vector<desk::Compared>& compared);
  void allow_comparing(bool allowed);
  void allow_budget(bool allowed);
  void open(Pane pane);

 private:
  wxNotebook* panes_ = nullptr;
  PlayPane* play_pane_ = nullptr;
  WhatIfPane* what_if_pane_ = nullptr;
  HeldPane* held_pane_ = nullptr;
  SuppliersPane* suppliers_pane_ = nullptr;
};

}  // namespace sparewell::desktop
