/// On the page "Patients": the chosen patient's parts, and how long they will last.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/panel.h>

#include "desk/commands.hpp"
#include "desk/forecast_test.hpp"
#include "desk/patient_card.hpp"

class wxCheckBox;

namespace sparewell::desktop {

class ChartView;
class CommandRow;
class TableView;
class WrappedLabel;

class PartsPane : public wxPanel {
 public:
  struct Actions {
    std::function<void(desk::Command)> run;  ///< starts a command
    std::function<void()> choice_changed;    ///< another part is chosen
    std::function<void()> show_again;        ///< other parts are to be shown
  };
  PartsPane(wxWindow* parent, Actions actions);

  void show(const desk::DayPtr& day, const desk::PatientCard& card);
  /// What is known of how good the forecasts are; nullptr when they were not tested.
  void show_test(const desk::ForecastTestPtr& test);
  /// Whether parts no longer in use are shown too.
  [[nodiscard]] bool with_ended() const;
  [[nodiscard]] const desk::Table& table() const { return parts_; }
  void show_ended();
  /// A position in Clinic::units.
  void choose(std::size_t unit);
  /// The chosen part, in use or not; nullptr when none is chosen.
  [[nodiscard]] const Unit* chosen() const;
  void allow_work(const desk::CommandState& state);

 private:
  void show_part(const std::string& id);

  Actions actions_;
  desk::DayPtr day_;
  desk::ForecastTestPtr test_;
  desk::Table parts_;
  wxCheckBox* with_ended_ = nullptr;
  ChartView* chart_ = nullptr;
  TableView* view_ = nullptr;
  WrappedLabel* life_ = nullptr;
  WrappedLabel* trust_ = nullptr;
  CommandRow* commands_ = nullptr;
  std::vector<desk::StripEntry> strips_;
};

}  // namespace sparewell::desktop
