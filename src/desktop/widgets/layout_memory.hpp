/// What widgets remember of how they were arranged by hand: one memory for the whole program.
#pragma once

#include <string>

#include "desk/window_layout.hpp"

class wxCheckBox;
class wxChoice;

namespace sparewell::desktop {

/// The program's memory; the frame reads and writes it.
[[nodiscard]] desk::WindowLayout& window_layout();

/// From now on the box, or the choice, comes back as it was left. Call once its own handler is
/// bound: that is told what is remembered, as soon as the window is complete.
void remember_filter(wxCheckBox& box, const std::string& name);
void remember_filter(wxChoice& choice, const std::string& name);

}  // namespace sparewell::desktop
