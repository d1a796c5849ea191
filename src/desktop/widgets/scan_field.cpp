#include "desktop/widgets/scan_field.hpp"

#include <wx/textctrl.h>

#include "desktop/text.hpp"
#include "exchange/barcode/gs1_elements.hpp"

namespace sparewell::desktop {
namespace {

constexpr auto separator_sign = "\u241d";

}  // namespace

void keep_separators(wxTextCtrl& field) {
  field.Bind(wxEVT_CHAR_HOOK, [&field](wxKeyEvent& event) {
    if (!event.ControlDown() || event.GetRawKeyCode() != ']') return event.Skip();
    field.WriteText(to_wx(separator_sign));
  });
}

std::string scanned_text(const wxTextCtrl& field) {
  auto text = field.GetValue();
  text.Replace(to_wx(separator_sign), wxString{exchange::group_separator});
  return from_wx(text);
}

}  // namespace sparewell::desktop
