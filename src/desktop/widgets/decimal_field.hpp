/// A number with decimals in a field with arrows.
#pragma once

class wxSpinCtrlDouble;

namespace sparewell::desktop {

/// Shows the number with the decimal sign of the program's language, and reads either sign. The
/// toolkit goes by the computer's locale, which the program leaves alone.
void show_own_decimals(wxSpinCtrlDouble& field);

}  // namespace sparewell::desktop
