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
  // On a page that is not shown yet, the toolkit works out the width without the bold font.
  label->SetMinSize({label->GetTextExtent(to_wx(text)).x + label->FromDIP(2), -1});
  return label;
}

}  // namespace sparewell::desktop
