/// One page of the window.
#pragma once

#include <optional>
#include <string>

#include <wx/panel.h>

#include "desk/day.hpp"
#include "desk/printing/printable.hpp"

namespace sparewell::desktop {

class Page : public wxPanel {
 public:
  using wxPanel::wxPanel;
  /// Shows another day; search, order and chosen row stay as they are.
  virtual void show(const desk::DayPtr& day) = 0;
  /// Goes to the page's find box.
  virtual void find() = 0;
  /// What stands on the page's tab.
  [[nodiscard]] virtual std::string tab() const = 0;
  /// What is put on paper of it; empty where it has no list, or nothing is shown yet.
  [[nodiscard]] virtual std::optional<desk::Printable> printable() const { return std::nullopt; }
};

}  // namespace sparewell::desktop
