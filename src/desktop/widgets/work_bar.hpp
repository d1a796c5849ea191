/// The status line: what is going on, how far it is, and a button to stop it.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include <wx/statusbr.h>
#include <wx/timer.h>

class wxButton;
class wxGauge;

namespace sparewell::desktop {

class WorkBar : public wxStatusBar {
 public:
  WorkBar(wxWindow* parent, std::function<void()> stop);

  /// `done` from 0 to 1; empty when it is not known.
  void working(const std::string& what, std::optional<double> done, bool can_stop);
  void idle(const std::string& text);

 private:
  void place();

  std::function<void()> stop_;
  wxGauge* gauge_ = nullptr;
  wxButton* stop_button_ = nullptr;
  wxTimer pulse_;
};

}  // namespace sparewell::desktop
