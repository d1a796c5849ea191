/// On the page "Plan": ordering today beside waiting, another target and the loss of a supplier.
#pragma once

#include <functional>
#include <optional>

#include <wx/scrolwin.h>

#include "desk/day.hpp"
#include "desk/what_if_page.hpp"

class wxButton;
class wxChoice;
class wxSizer;
class wxSpinCtrl;

namespace sparewell::desktop {

class TableView;
class WrappedLabel;

class WhatIfPane : public wxScrolledWindow {
 public:
  /// `compare` starts the comparison that is asked for.
  WhatIfPane(wxWindow* parent, std::function<void()> compare);

  /// What was compared before no longer holds, and goes.
  void show(const desk::DayPtr& day);
  void show_compared(const std::vector<desk::Compared>& compared);
  void allow_comparing(bool allowed);
  [[nodiscard]] desk::WhatIfQuestions questions() const;
  void focus_rows();

 private:
  wxSizer* make_questions(std::function<void()> compare);

  wxSpinCtrl* wait_ = nullptr;
  wxSpinCtrl* target_ = nullptr;
  wxChoice* without_ = nullptr;
  wxButton* compare_ = nullptr;
  std::vector<SupplierName> suppliers_;
  std::optional<desk::Table> table_;
  TableView* rows_ = nullptr;
  wxSizer* result_ = nullptr;
  WrappedLabel* risks_ = nullptr;
  WrappedLabel* note_ = nullptr;
};

}  // namespace sparewell::desktop
