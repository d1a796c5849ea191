#include "desktop/dialogs/lines_dialog.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {

LinesDialog::LinesDialog(wxWindow* parent, const std::string& title, const std::string& intro,
                         const std::vector<std::string>& lines)
    : Form{parent, title, intro} {
  auto* text = new wxTextCtrl{this,
                              wxID_ANY,
                              to_wx(fmt::format("{}", fmt::join(lines, "\n"))),
                              wxDefaultPosition,
                              FromDIP(wxSize{820, 400}),
                              wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*text, title);
  add_wide(text, 1);
  finish(said("C&lose"), false);
  text->SetFocus();
}

}  // namespace sparewell::desktop
