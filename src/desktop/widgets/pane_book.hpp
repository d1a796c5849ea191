/// Books whose panes are laid out only once they have been in front. The toolkit measures everything
/// in every pane before it shows the first, which is felt where panes are full.
#pragma once

#include <string>

class wxNotebook;
class wxWindow;

namespace sparewell::desktop {

/// What the next pane has to be made in.
[[nodiscard]] wxWindow* room_for_pane(wxNotebook& book);
/// Adds a pane that was made in room_for_pane. The first one is in front.
void add_pane(wxNotebook& book, wxWindow* pane, const std::string& title);
[[nodiscard]] wxWindow* pane_in_front(const wxNotebook& book);

}  // namespace sparewell::desktop
