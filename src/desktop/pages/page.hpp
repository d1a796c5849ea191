/// One page of the window.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <wx/panel.h>

#include "desk/day.hpp"
#include "desk/printing/printable.hpp"

class wxStaticText;

namespace sparewell::desktop {

class Page : public wxPanel {
 public:
  using wxPanel::wxPanel;
  /// Shows the day, or says that what the page shows is being worked out.
  void show_or_wait(const desk::DayPtr& day);
  /// Until it has something to show. The toolkit measures everything on every page, also on those
  /// behind, before it shows the first.
  void put_aside();
  /// Whether it is put aside, and can have no focus.
  [[nodiscard]] bool is_put_aside() const { return !put_aside_.empty(); }
  /// Shows another day; search, order and chosen row stay as they are.
  virtual void show(const desk::DayPtr& day) = 0;
  /// Goes to the page's find box.
  virtual void find() = 0;
  /// The name under which the window remembers the page; it never changes.
  [[nodiscard]] virtual std::string name() const = 0;
  /// What stands on the page's tab.
  [[nodiscard]] virtual std::string tab() const = 0;
  /// What is put on paper of it; empty where it has no list, or nothing is shown yet.
  [[nodiscard]] virtual std::optional<desk::Printable> printable() const { return std::nullopt; }

 protected:
  /// Whether the page has something to show while there are the records alone.
  [[nodiscard]] virtual bool shows_records() const { return false; }

 private:
  void wait();
  void stop_waiting();

  wxStaticText* waiting_ = nullptr;
  std::vector<wxWindow*> put_aside_;  ///< what the page shows when it does not wait
};

}  // namespace sparewell::desktop
