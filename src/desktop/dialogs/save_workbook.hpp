/// Asks where a workbook or a paper is to be written.
#pragma once

#include <string>

class wxWindow;

namespace sparewell::desktop {

/// The chosen file, ending in ".xlsx"; "" when the person thought better of it. `name` is proposed;
/// signs that file systems do not take are replaced.
[[nodiscard]] std::string ask_for_workbook(wxWindow* parent, const std::string& title,
                                           std::string name);
/// The same for a paper, ending in ".pdf".
[[nodiscard]] std::string ask_for_pdf(wxWindow* parent, const std::string& title, std::string name);

}  // namespace sparewell::desktop
