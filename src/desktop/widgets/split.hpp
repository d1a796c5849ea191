/// Two panes with a movable border between them.
#pragma once

#include <wx/splitter.h>

namespace sparewell::desktop {

/// A splitter without a border of its own.
[[nodiscard]] wxSplitterWindow* make_split(wxWindow* parent);

/// Gives the first pane `share` of the room, until somebody moves the border; then that share.
void share_room(wxSplitterWindow& split, double share);

}  // namespace sparewell::desktop
