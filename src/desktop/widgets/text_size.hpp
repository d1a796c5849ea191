/// The size of all text of the program: menus, lists, dialogs and pictures.
#pragma once

#include <wx/window.h>

namespace sparewell::desktop {

/// In percent of the size that the desktop asks for.
void apply_text_size(int percent);

/// Makes a window and all in it measure their texts again, once the size of text has changed.
void measure_again(wxWindow& window);

}  // namespace sparewell::desktop
