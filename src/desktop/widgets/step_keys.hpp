/// Keys of a drawn list: up and down step, Tab leaves.
#pragma once

#include <functional>

#include <wx/event.h>
#include <wx/window.h>

namespace sparewell::desktop {

/// `step` is called with 1 or -1. Other keys are left to others.
void on_step_key(wxWindow& window, wxKeyEvent& event, const std::function<void(int)>& step);

}  // namespace sparewell::desktop
