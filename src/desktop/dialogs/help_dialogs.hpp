/// The key list and what the program is.
#pragma once

class wxWindow;

namespace sparewell::desktop {

void show_keys(wxWindow* parent);
void show_about(wxWindow* parent);

}  // namespace sparewell::desktop
