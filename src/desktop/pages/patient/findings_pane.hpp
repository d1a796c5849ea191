/// On the page "Patients": what the checks find about what the chosen patient wears.
#pragma once

#include <functional>
#include <vector>

#include <wx/panel.h>

#include "desk/commands.hpp"
#include "desk/finding_rows.hpp"

namespace sparewell::desktop {

class CommandRow;
class TableView;
class WrappedLabel;

class FindingsPane : public wxPanel {
 public:
  /// `run` starts a command; `choice_changed` is called when another finding is chosen.
  FindingsPane(wxWindow* parent, const std::function<void(desk::Command)>& run,
               std::function<void()> choice_changed);

  void show(const desk::Day& day, std::vector<desk::PatientFinding> findings);
  /// nullptr when none is chosen.
  [[nodiscard]] const desk::PatientFinding* chosen() const;
  [[nodiscard]] const desk::Table& table() const { return table_; }
  void allow_work(const desk::CommandState& state);
  void focus_rows();

 private:
  void show_words(const std::string& id);

  std::function<void()> choice_changed_;
  std::vector<desk::PatientFinding> findings_;
  desk::Table table_;
  TableView* view_ = nullptr;
  WrappedLabel* words_ = nullptr;
  CommandRow* commands_ = nullptr;
};

}  // namespace sparewell::desktop
