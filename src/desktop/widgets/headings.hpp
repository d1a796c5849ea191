/// Headings inside a page.
#pragma once

#include <string>

#include <wx/stattext.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

/// A bold line above the control that it names.
inline wxStaticText* section_heading(wxWindow* parent, const std::string& text) {
  auto* label = new wxStaticText{parent, wxID_ANY, to_wx(text)};
  label->SetFont(label->GetFont().Bold());
  return label;
}

}  // namespace sparewell::desktop
