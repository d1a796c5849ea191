/// One page of the window.
#pragma once

#include <string>

#include <wx/panel.h>

#include "desk/day.hpp"

namespace sparewell::desktop {

class Page : public wxPanel {
 public:
  using wxPanel::wxPanel;
  /// Shows another day; search, order and chosen row stay as they are.
  virtual void show(const desk::DayPtr& day) = 0;
  /// Goes to the page's find box.
  virtual void find() = 0;
  /// The name under which the window remembers the page; it never changes.
  [[nodiscard]] virtual std::string name() const = 0;
  /// What stands on the page's tab.
  [[nodiscard]] virtual std::string tab() const = 0;
};

}  // namespace sparewell::desktop
