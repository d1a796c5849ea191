/// Buttons of commands in a row, in as many lines as the width needs.
#pragma once

#include <functional>
#include <utility>
#include <vector>

#include <wx/panel.h>

#include "desk/commands.hpp"

class wxButton;

namespace sparewell::desktop {

class CommandRow : public wxPanel {
 public:
  CommandRow(wxWindow* parent, const std::vector<desk::Command>& commands,
             const std::function<void(desk::Command)>& run);
  /// Enables what can be used now.
  void allow_work(const desk::CommandState& state);

 private:
  std::vector<std::pair<wxButton*, desk::Command>> buttons_;
};

}  // namespace sparewell::desktop
