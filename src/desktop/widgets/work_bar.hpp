/// The status line: what is going on, how far it is, and a button to stop it.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include <wx/statusbr.h>
#include <wx/timer.h>

#include "desk/job.hpp"

class wxButton;
class wxGauge;

namespace sparewell::desktop {

class WorkBar : public wxStatusBar {
 public:
  WorkBar(wxWindow* parent, std::function<void()> stop);

  void working(const desk::JobProgress& progress, bool can_stop);
  void idle(const std::string& text);
  /// Makes room for texts whose size has changed.
  void measure_again();

 private:
  void place();

  std::function<void()> stop_;
  wxGauge* gauge_ = nullptr;
  wxButton* stop_button_ = nullptr;
  wxTimer pulse_;
};

}  // namespace sparewell::desktop
