/// Sliders that work out, while they are dragged, what today's orders would be otherwise.
#pragma once

#include <functional>
#include <memory>
#include <optional>

#include <wx/panel.h>

#include "desk/newest_work.hpp"
#include "desk/order_sliders.hpp"

class wxButton;
class wxSizer;
class wxSlider;
class wxSpinCtrl;
class wxSpinCtrlDouble;
class wxTextCtrl;

namespace sparewell::desktop {

class WrappedLabel;

class SliderStrip : public wxPanel {
 public:
  struct Actions {
    /// Called when an answer came, or the sliders went back to the settings.
    std::function<void()> changed;
    /// Works today's orders out within a budget, or without one.
    std::function<void(const std::optional<Money>&)> keep_to;
  };
  SliderStrip(wxWindow* parent, Actions actions);

  void show(const desk::DayPtr& day);
  [[nodiscard]] desk::OrderSliders& sliders() { return sliders_; }
  void allow_budget(bool allowed);

 private:
  wxSizer* make_sliders();
  wxSizer* make_group(const char* label, wxSlider*& slider, const char* name, wxWindow* field);
  wxSizer* make_below();
  void set(desk::SliderSetting setting);
  void typed_budget();
  void place_controls();
  void ask();

  Actions actions_;
  desk::OrderSliders sliders_;
  std::shared_ptr<desk::DecisionBench> bench_;
  desk::OrderSliders::DecidedPtr usual_;
  bool allowed_ = false;
  wxSlider* target_ = nullptr;
  wxSlider* wait_ = nullptr;
  wxSlider* budget_ = nullptr;
  wxSpinCtrlDouble* target_field_ = nullptr;
  wxSpinCtrl* wait_field_ = nullptr;
  wxTextCtrl* budget_field_ = nullptr;
  WrappedLabel* summary_ = nullptr;
  wxButton* back_ = nullptr;
  wxButton* keep_ = nullptr;
  desk::NewestWork work_;
};

}  // namespace sparewell::desktop
