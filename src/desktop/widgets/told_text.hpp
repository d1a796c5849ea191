/// A text of many lines that is read and copied, not changed.
#pragma once

#include <string>

#include <wx/textctrl.h>

namespace sparewell::desktop {

/// `name` is for screen readers; at least `lines` high and `width` device-independent pixels wide.
[[nodiscard]] wxTextCtrl* told_text(wxWindow* parent, const std::string& name, int lines,
                                    int width = 200);

}  // namespace sparewell::desktop
