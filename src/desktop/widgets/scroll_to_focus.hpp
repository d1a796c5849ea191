/// Pages that scroll as a whole where large text or a small window leaves no room.
#pragma once

#include <wx/scrolwin.h>

namespace sparewell::desktop {

/// Brings whatever gets the focus inside `page` into sight. The toolkit does so for children of the
/// page itself only.
void scroll_to_focus(wxScrolledWindow& page);

}  // namespace sparewell::desktop
