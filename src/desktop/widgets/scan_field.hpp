/// Text fields that take labels as scanners send them.
#pragma once

#include <string>

class wxTextCtrl;

namespace sparewell::desktop {

/// From now on the field keeps the separator of GS1, which scanners that are keyboards send as
/// Ctrl+] and a text field would lose: a lot and the serial number behind it would run together. It
/// shows as its own sign, U+241D.
void keep_separators(wxTextCtrl& field);
/// What the field holds, with the separators of GS1 in place of their signs.
[[nodiscard]] std::string scanned_text(const wxTextCtrl& field);

}  // namespace sparewell::desktop
