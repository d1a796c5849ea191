/// Two panes with a movable border between them.
#pragma once

#include <string>

#include <wx/splitter.h>

namespace sparewell::desktop {

/// A splitter without a border of its own.
[[nodiscard]] wxSplitterWindow* make_split(wxWindow* parent);

/// Gives the first pane `share` of the room, until somebody moves the border; then that share,
/// which is remembered under `name`.
void share_room(wxSplitterWindow& split, double share, const std::string& name);

}  // namespace sparewell::desktop
