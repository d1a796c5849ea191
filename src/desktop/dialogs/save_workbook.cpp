#include "desktop/dialogs/save_workbook.hpp"

#include <algorithm>

#include <wx/filedlg.h>
#include <wx/stdpaths.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

std::string ask_for_workbook(wxWindow* parent, const std::string& title, std::string name) {
  std::ranges::replace_if(
      name,
      [](char c) { return std::string_view{"/\\:*?\"<>|"}.find(c) != std::string_view::npos; },
      '-');
  wxFileDialog dialog{parent,
                      to_wx(title),
                      wxStandardPaths::Get().GetDocumentsDir(),
                      to_wx(name + ".xlsx"),
                      "Workbooks (*.xlsx)|*.xlsx",
                      wxFD_SAVE | wxFD_OVERWRITE_PROMPT};
  if (dialog.ShowModal() != wxID_OK) return {};
  auto path = dialog.GetPath();
  if (!path.Lower().EndsWith(".xlsx")) path += ".xlsx";
  return from_wx(path);
}

}  // namespace sparewell::desktop
