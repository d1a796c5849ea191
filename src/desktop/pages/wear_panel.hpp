/// The page "Wear": three panes on the kind that is chosen above them.
#pragma once

#include <functional>

#include "clinic/say.hpp"
#include "desk/wear_page.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxChoice;
class wxNotebook;

namespace sparewell::desktop {

class EarlyPane;
class EffectsPane;
class TestPane;

class WearPanel : public Page {
 public:
  /// In the order of their tabs.
  enum class Pane { test, effects, early };

  /// `test` starts a test of the forecasts; `go_to` shows a unit, by its position in Clinic::units.
  WearPanel(wxWindow* parent, std::function<void()> test, std::function<void(std::size_t)> go_to);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string name() const override { return "wear"; }
  [[nodiscard]] std::string tab() const override { return said("Wear"); }
  void show_test(const desk::ForecastTestPtr& test);
  void allow_testing(bool allowed);
  void open(Pane pane);

 private:
  wxSizer* make_top(std::function<void()> test);
  void choose(std::optional<Kind> kind);

  desk::WearPage page_;
  wxChoice* kinds_ = nullptr;
  wxButton* test_ = nullptr;
  wxNotebook* panes_ = nullptr;
  TestPane* test_pane_ = nullptr;
  EffectsPane* effects_pane_ = nullptr;
  EarlyPane* early_pane_ = nullptr;
};

}  // namespace sparewell::desktop
