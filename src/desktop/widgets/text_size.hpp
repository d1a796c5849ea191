/// The size of all text of the program: menus, lists, dialogs and pictures.
#pragma once

#include <wx/window.h>

namespace sparewell::desktop {

/// In percent of the size that the desktop asks for.
void apply_text_size(int percent);

/// Whether it has been changed while the program ran: pages that were hidden then have to measure
/// their texts once they are shown.
[[nodiscard]] bool text_size_was_changed();

/// How much larger text is shown than usual, for what must not follow, such as paper.
[[nodiscard]] double text_scale();

/// Makes a window and all in it measure their texts again, once the size of text has changed.
void measure_again(wxWindow& window);

}  // namespace sparewell::desktop
