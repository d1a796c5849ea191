#include "desktop/dialogs/save_workbook.hpp"

#include <algorithm>

#include <wx/filedlg.h>
#include <wx/stdpaths.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

std::string ask_for_file(wxWindow* parent, const std::string& title, std::string name,
                         const wxString& ending, const wxString& kinds) {
  std::ranges::replace_if(
      name,
      [](char c) { return std::string_view{"/\\:*?\"<>|"}.find(c) != std::string_view::npos; },
      '-');
  wxFileDialog dialog{parent,
                      to_wx(title),
                      wxStandardPaths::Get().GetDocumentsDir(),
                      to_wx(name) + ending,
                      kinds,
                      wxFD_SAVE | wxFD_OVERWRITE_PROMPT};
  if (dialog.ShowModal() != wxID_OK) return {};
  auto path = dialog.GetPath();
  if (!path.Lower().EndsWith(ending)) path += ending;
  return from_wx(path);
}

}  // namespace

std::string ask_for_workbook(wxWindow* parent, const std::string& title, std::string name) {
  return ask_for_file(parent, title, std::move(name), ".xlsx", said("Workbooks (*.xlsx)|*.xlsx"));
}

std::string ask_for_pdf(wxWindow* parent, const std::string& title, std::string name) {
  return ask_for_file(parent, title, std::move(name), ".pdf", said("PDF files (*.pdf)|*.pdf"));
}

}  // namespace sparewell::desktop
