#include "desktop/widgets/told_text.hpp"

#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {

wxTextCtrl* told_text(wxWindow* parent, const std::string& name, int lines, int width) {
  auto* text = new wxTextCtrl{parent,
                              wxID_ANY,
                              "",
                              wxDefaultPosition,
                              wxSize(parent->FromDIP(width), lines * parent->GetCharHeight()),
                              wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*text, name);
  return text;
}

}  // namespace sparewell::desktop
