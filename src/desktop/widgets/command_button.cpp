#include "desktop/widgets/command_button.hpp"

#include <fmt/format.h>
#include <wx/button.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

wxButton* command_button(wxWindow* parent, desk::Command command,
                         std::function<void(desk::Command)> run, const std::string& label) {
  const auto& spec = desk::command_spec(command);
  auto* button = new wxButton{parent, wxID_ANY, label.empty() ? to_wx(spec.label) : to_wx(label)};
  button->SetToolTip(to_wx(spec.key.empty() ? fmt::format("{}", spec.help)
                                            : fmt::format("{} ({})", spec.help, spec.key)));
  button->Bind(wxEVT_BUTTON,
               [run = std::move(run), command](wxCommandEvent&) { run(command); });
  return button;
}

}  // namespace sparewell::desktop
