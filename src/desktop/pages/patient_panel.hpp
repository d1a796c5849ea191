/// The page "Patients".
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/scrolwin.h>

#include "clinic/say.hpp"
#include "desk/alternative_parts.hpp"
#include "desk/commands.hpp"
#include "desk/forecast_test.hpp"
#include "desk/patient_card.hpp"
#include "desk/patient_findings.hpp"
#include "desk/patient_list.hpp"
#include "desktop/pages/page.hpp"

class wxCheckBox;
class wxNotebook;
class wxStaticText;

namespace sparewell::desktop {

class FindBox;
class FindingsPane;
class LimbsPane;
class PapersPane;
class PartsPane;
class PatientPane;
struct PaneActions;
class TableView;
class WrappedLabel;

class PatientPanel : public Page {
 public:
  /// `run` starts a command; `choice_changed` is called when another patient or part is chosen.
  PatientPanel(wxWindow* parent, std::function<void(desk::Command)> run,
               std::function<void()> choice_changed);

  /// The rows of the list for the day that is shown next, see desk::patient_rows.
  void prepare(const desk::DayPtr& day, std::vector<desk::TableRow> rows);
  void show(const desk::DayPtr& day) override;
  void find() override;
  [[nodiscard]] std::string name() const override { return "patients"; }
  [[nodiscard]] std::string tab() const override { return said("Patients"); }
  [[nodiscard]] std::optional<desk::Printable> printable() const override;
  /// Shows this patient and part, in use or not, whatever was searched before. `unit` is a position
  /// in Clinic::units.
  void choose(const PatientRef& patient, std::size_t unit);
  void choose(const PatientRef& patient);
  void focus_list();
  /// Goes to what the checks find about the chosen patient.
  void show_findings();
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
  /// The chosen finding; nullptr when none is chosen, or the findings are not shown.
  [[nodiscard]] const desk::PatientFinding* chosen_finding() const;
  /// Which part or missing function other items are asked for; empty when none is chosen.
  [[nodiscard]] std::optional<desk::AlternativesQuestion> question_of_others() const;
  void allow_work(const desk::CommandState& state);

 protected:
  [[nodiscard]] bool shows_records() const override { return true; }

 private:
  enum class Pane { limbs, parts, findings, history, measurements, travel, reactions, papers };

  wxWindow* make_list(wxWindow* parent);
  wxWindow* make_card(wxWindow* parent);
  wxSizer* make_text(wxWindow* card);
  void make_panes();
  void list_changed();
  void lay_out_card();
  void show_patient(const std::string& ref);
  /// Another part or finding is chosen.
  void changed();
  /// Tells the panes whom to show; fills the one in sight.
  void tell_panes(const PatientRef& patient, std::vector<desk::PatientFinding> found);
  void fill_pane_in_sight();
  void open(Pane pane);
  [[nodiscard]] bool shows(Pane pane) const;
  /// The pane in sight where it chooses a part of its own; nullptr for the others.
  [[nodiscard]] const PatientPane* choosing_pane() const;

  std::function<void(desk::Command)> run_;
  std::function<void()> choice_changed_;
  bool has_bookings_ = false;
  desk::DayPtr day_;
  desk::DayPtr prepared_day_;
  std::vector<desk::TableRow> prepared_;
  desk::PatientList list_;
  FindBox* find_ = nullptr;
  wxCheckBox* only_with_parts_ = nullptr;
  wxStaticText* count_ = nullptr;
  TableView* list_view_ = nullptr;
  wxScrolledWindow* card_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* facts_ = nullptr;
  WrappedLabel* sensitivities_ = nullptr;
  WrappedLabel* caution_ = nullptr;
  wxNotebook* panes_ = nullptr;
  LimbsPane* limbs_ = nullptr;
  PartsPane* parts_ = nullptr;
  FindingsPane* findings_ = nullptr;
  PapersPane* papers_ = nullptr;
  std::vector<PatientPane*> when_seen_;  ///< work their content out when they are looked at
};

}  // namespace sparewell::desktop
