/// Names for screen readers. The toolkit gives none to text fields and lists on GTK.
#pragma once

#include <string>

class wxWindow;

namespace sparewell::desktop {

/// What assistive technology calls the control, and one sentence more where that helps.
void set_accessible_name(wxWindow& window, const std::string& name,
                         const std::string& description = {});

}  // namespace sparewell::desktop
