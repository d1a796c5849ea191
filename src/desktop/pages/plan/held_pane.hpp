/// On the page "Plan": what is needed and stands on none of today's orders.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include <wx/scrolwin.h>

#include "desk/held_page.hpp"

class wxButton;
class wxStaticText;
class wxTextCtrl;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class HeldPane : public wxScrolledWindow {
 public:
  /// `go_to` shows a unit, by its position in Clinic::units; `keep_to` works the orders out anew
  /// within a budget, or without one.
  HeldPane(wxWindow* parent, std::function<void(std::size_t)> go_to,
           std::function<void(const std::optional<Money>&)> keep_to);

  void show(const desk::DayPtr& day);
  void allow_working(bool allowed);
  void find();
  /// "Held back (3)".
  [[nodiscard]] std::string title() const { return page_.title(); }

 private:
  wxSizer* make_needs_row();
  wxSizer* make_budget_row(std::function<void(const std::optional<Money>&)> keep_to);
  void needs_changed();
  void show_patient(const std::string& id);

  desk::HeldPage page_;
  std::function<void(std::size_t)> go_to_;
  WrappedLabel* needs_summary_ = nullptr;
  FindBox* find_ = nullptr;
  wxButton* show_patient_ = nullptr;
  TableView* needs_ = nullptr;
  WrappedLabel* words_ = nullptr;
  wxStaticText* budget_title_ = nullptr;
  wxTextCtrl* budget_ = nullptr;
  wxButton* keep_to_ = nullptr;
  WrappedLabel* refusal_ = nullptr;
  WrappedLabel* lines_summary_ = nullptr;
  TableView* lines_ = nullptr;
};

}  // namespace sparewell::desktop
