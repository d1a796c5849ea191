/// The page "Patients".
#pragma once

#include <functional>

#include <wx/scrolwin.h>

#include "desk/commands.hpp"
#include "desk/forecast_test.hpp"
#include "desk/patient_card.hpp"
#include "desk/patient_list.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxCheckBox;
class wxStaticText;

namespace sparewell::desktop {

class FindBox;
class LifeChart;
class TableView;
class WrappedLabel;

class PatientPanel : public Page {
 public:
  /// `run` starts a command; `choice_changed` is called when another patient or part is chosen.
  PatientPanel(wxWindow* parent, std::function<void(desk::Command)> run,
               std::function<void()> choice_changed);

  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string tab() const override { return "Patients"; }
  /// Shows this patient and part, in use or not, whatever was searched before. `unit` is a position
  /// in Clinic::units.
  void choose(const PatientRef& patient, std::size_t unit);
  /// What is known of how good the forecasts are; nullptr when they were not tested.
  void show_test(const desk::ForecastTestPtr& test);
  /// "" when none is chosen.
  [[nodiscard]] std::string chosen_patient() const;
  /// The chosen part where it is in use; otherwise nullptr.
  [[nodiscard]] const Unit* chosen_unit() const;
  /// Whether something is booked for the chosen patient.
  [[nodiscard]] bool has_bookings() const { return has_bookings_; }
  /// The chosen part, in use or not; nullptr when none is chosen.
  [[nodiscard]] const Unit* chosen_part() const;
  void allow_work(const desk::CommandState& state);

 private:
  wxWindow* make_list(wxWindow* parent);
  wxWindow* make_card(wxWindow* parent);
  wxSizer* make_text(wxWindow* card);
  void list_changed();
  void lay_out_card();
  void show_part(const std::string& id);
  void show_patient(const std::string& ref);

  wxSizer* make_buttons();

  std::function<void(desk::Command)> run_;
  std::function<void()> choice_changed_;
  wxButton* issue_ = nullptr;
  wxButton* end_ = nullptr;
  wxButton* book_ = nullptr;
  wxButton* cancel_ = nullptr;
  bool has_bookings_ = false;
  desk::DayPtr day_;
  desk::ForecastTestPtr test_;
  desk::PatientList list_;
  desk::Table parts_;
  FindBox* find_ = nullptr;
  wxCheckBox* only_with_parts_ = nullptr;
  wxStaticText* count_ = nullptr;
  TableView* list_view_ = nullptr;
  wxScrolledWindow* card_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* facts_ = nullptr;
  WrappedLabel* sensitivities_ = nullptr;
  WrappedLabel* caution_ = nullptr;
  wxCheckBox* with_ended_ = nullptr;
  LifeChart* chart_ = nullptr;
  TableView* parts_view_ = nullptr;
  WrappedLabel* life_ = nullptr;
  WrappedLabel* trust_ = nullptr;
  std::vector<desk::StripEntry> strips_;
};

}  // namespace sparewell::desktop
