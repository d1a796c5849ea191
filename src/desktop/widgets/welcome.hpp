/// What the window shows while no clinic file is open.
#pragma once

#include <functional>

#include <wx/panel.h>

#include "desk/commands.hpp"

namespace sparewell::desktop {

class Welcome : public wxPanel {
 public:
  Welcome(wxWindow* parent, std::function<void(desk::Command)> run);
};

}  // namespace sparewell::desktop
