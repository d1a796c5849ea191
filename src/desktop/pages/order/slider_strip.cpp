#include "desktop/pages/order/slider_strip.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/slider.h>
#include <wx/spinctrl.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/decimal_field.hpp"
#include "desktop/widgets/quiet_worker.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

SliderStrip::SliderStrip(wxWindow* parent, Actions actions)
    : wxPanel{parent},
      actions_{std::move(actions)},
      work_{quiet_worker(), desk::NewestWork::Keep::answers} {
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(make_sliders(), wxSizerFlags{}.Expand());
  sizer->Add(make_below(), wxSizerFlags{}.Expand());
  SetSizer(sizer);
}

wxSizer* SliderStrip::make_sliders() {
  target_field_ = new wxSpinCtrlDouble{this, wxID_ANY, "95"};
  target_field_->SetIncrement(desk::target_step_percent);
  target_field_->SetDigits(1);
  show_own_decimals(*target_field_);
  target_field_->SetInitialSize(target_field_->GetSizeFromTextSize(GetTextExtent("100.0").x));
  wait_field_ = new wxSpinCtrl{this,          wxID_ANY,        "0", wxDefaultPosition,
                               wxDefaultSize, wxSP_ARROW_KEYS, 0,   desk::most_wait_days};
  wait_field_->SetInitialSize(wait_field_->GetSizeFromTextSize(GetTextExtent("100").x));
  budget_field_ =
      new wxTextCtrl{this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER};
  budget_field_->SetInitialSize(budget_field_->GetSizeFromTextSize(GetTextExtent("100000.00").x));
  budget_field_->SetToolTip(to_wx(said("An amount and Enter; empty for no budget")));
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  const auto flags = wxSizerFlags{1}.Expand().Border(wxRIGHT, FromDIP(12));
  row->Add(make_group(said("What if: service target, %"), target_, said("Service target, percent"),
                      target_field_),
           flags);
  row->Add(make_group(said("Wait, days"), wait_, said("Wait before ordering, days"), wait_field_),
           flags);
  row->Add(make_group(said("Budget"), budget_, said("Budget for the goods"), budget_field_),
           wxSizerFlags{1}.Expand());
  set_accessible_name(*target_field_, said("Service target, percent, typed"));
  set_accessible_name(*wait_field_, said("Wait before ordering, days, typed"));
  set_accessible_name(*budget_field_, said("Budget for the goods, typed"));

  const auto from_target = [this](double percent) {
    auto setting = sliders_.setting();
    setting.target_percent = percent;
    set(setting);
  };
  const auto from_wait = [this](int wait) {
    auto setting = sliders_.setting();
    setting.wait_days = wait;
    set(setting);
  };
  target_->Bind(wxEVT_SLIDER, [from_target](wxCommandEvent& event) {
    from_target(event.GetInt() * desk::target_step_percent);
  });
  target_field_->Bind(wxEVT_SPINCTRLDOUBLE,
                      [from_target](wxSpinDoubleEvent& event) { from_target(event.GetValue()); });
  wait_->Bind(wxEVT_SLIDER, [from_wait](wxCommandEvent& event) { from_wait(event.GetInt()); });
  wait_field_->Bind(wxEVT_SPINCTRL,
                    [from_wait](wxSpinEvent& event) { from_wait(event.GetPosition()); });
  budget_->Bind(wxEVT_SLIDER, [this](wxCommandEvent& event) {
    auto setting = sliders_.setting();
    setting.budget = sliders_.budget_at(event.GetInt());
    set(setting);
  });
  budget_field_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { typed_budget(); });
  budget_field_->Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    if (budget_field_->IsModified()) typed_budget();
  });
  return row;
}

wxSizer* SliderStrip::make_group(const char* label, wxSlider*& slider, const char* name,
                                 wxWindow* field) {
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  const auto flags = wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(6));
  row->Add(new wxStaticText{this, wxID_ANY, to_wx(label)}, flags);
  slider = new wxSlider{this, wxID_ANY, 0, 0, 1};
  slider->SetMinSize({FromDIP(70), -1});
  set_accessible_name(*slider, name);
  field->MoveAfterInTabOrder(slider);
  row->Add(slider, wxSizerFlags{1}.CentreVertical().Border(wxRIGHT, FromDIP(6)));
  row->Add(field, flags);
  return row;
}

wxSizer* SliderStrip::make_below() {
  summary_ = new WrappedLabel{this};
  back_ = new wxButton{this, wxID_ANY, to_wx(said("&Back to the clinic's settings"))};
  back_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { set(sliders_.usual()); });
  keep_ = new wxButton{this, wxID_ANY, to_wx(said("&Keep to this budget"))};
  keep_->SetToolTip(
      to_wx(said("Work today's orders out again within this budget, as under Held back")));
  keep_->Bind(wxEVT_BUTTON,
              [this](wxCommandEvent&) { actions_.keep_to(sliders_.setting().budget); });
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(summary_, wxSizerFlags{1}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  row->Add(back_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(6)));
  row->Add(keep_, wxSizerFlags{}.CentreVertical());
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    const int buttons = back_->GetBestSize().x + keep_->GetBestSize().x;
    summary_->wrap_to(GetClientSize().x - buttons - FromDIP(30));
    event.Skip();
  });
  return row;
}

void SliderStrip::show(const desk::DayPtr& day) {
  work_.forget();
  usual_.reset();
  bench_ = day ? std::make_shared<desk::DecisionBench>(day) : nullptr;
  Enable(bench_ != nullptr);
  if (!bench_) return;
  sliders_.show(day);
  const auto steps = [](double percent) {
    return static_cast<int>(percent / desk::target_step_percent + 0.5);
  };
  target_->SetRange(steps(sliders_.least_target()), steps(desk::most_target_percent));
  target_field_->SetRange(sliders_.least_target(), desk::most_target_percent);
  wait_->SetRange(0, desk::most_wait_days);
  budget_->SetRange(0, sliders_.budget_steps());
  place_controls();
}

void SliderStrip::allow_budget(bool allowed) {
  allowed_ = allowed;
  keep_->Enable(allowed_ && sliders_.only_budget());
}

void SliderStrip::set(desk::SliderSetting setting) {
  if (!bench_) return;
  sliders_.set(setting);
  place_controls();
  ask();
}

void SliderStrip::typed_budget() {
  budget_field_->SetModified(false);
  const auto typed = from_wx(budget_field_->GetValue().Strip(wxString::both));
  const auto budget = sliders_.read_budget(typed);
  if (!budget) {
    summary_->set_text(budget.error().sentence);
    Layout();
    return;
  }
  auto setting = sliders_.setting();
  setting.budget = *budget;
  set(setting);
}

void SliderStrip::place_controls() {
  const auto& setting = sliders_.setting();
  target_->SetValue(static_cast<int>(setting.target_percent / desk::target_step_percent + 0.5));
  target_field_->SetValue(setting.target_percent);
  wait_->SetValue(setting.wait_days);
  wait_field_->SetValue(setting.wait_days);
  budget_->SetValue(sliders_.budget_step());
  budget_field_->ChangeValue(to_wx(sliders_.budget_text()));
  budget_field_->SetHint(to_wx(said("none")));
  target_->SetToolTip(to_wx(sliders_.target_words()));
  wait_->SetToolTip(to_wx(sliders_.wait_words()));
  budget_->SetToolTip(to_wx(sliders_.budget_words()));
  back_->Enable(sliders_.moved());
  keep_->Enable(allowed_ && sliders_.only_budget());
  summary_->set_text(sliders_.moved() ? sliders_.summary() : desk::OrderSliders::caution());
  Layout();
}

void SliderStrip::ask() {
  if (!sliders_.moved()) {
    work_.forget();
    sliders_.forget_answer();
    place_controls();
    actions_.changed();
    return;
  }
  struct Answer {
    desk::OrderSliders::DecidedPtr usual;
    desk::OrderSliders::DecidedPtr of_setting;
  };
  auto answer = std::make_shared<Answer>();
  answer->usual = usual_;
  work_.ask(
      [bench = bench_, usual = sliders_.usual(), setting = sliders_.setting(), answer] {
        if (!answer->usual) answer->usual = bench->decide(usual);
        answer->of_setting = bench->decide(setting);
      },
      [this, setting = sliders_.setting(), answer](const std::exception_ptr& failure) {
        if (failure) {
          summary_->set_text(desk::describe_failure(failure));
        } else {
          usual_ = answer->usual;
          sliders_.answer(answer->usual, answer->of_setting, setting);
          summary_->set_text(sliders_.summary());
        }
        Layout();
        actions_.changed();
      });
}

}  // namespace sparewell::desktop
