/// Between the program's UTF-8 and the toolkit's strings.
#pragma once

#include <string>

#include <wx/string.h>

namespace sparewell::desktop {

inline wxString to_wx(std::string_view text) {
  return wxString::FromUTF8(text.data(), text.size());
}
inline std::string from_wx(const wxString& text) {
  return std::string{text.utf8_str()};
}

}  // namespace sparewell::desktop
