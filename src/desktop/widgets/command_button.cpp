#include "desktop/widgets/command_button.hpp"

#include <fmt/format.h>
#include <wx/button.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

std::string tooltip_words(const desk::CommandSpec& spec) {
  return spec.key.empty() ? std::string{spec.help} : fmt::format("{} ({})", spec.help, spec.key);
}

wxButton* command_button(wxWindow* parent, desk::Command command,
                         std::function<void(desk::Command)> run, const std::string& label) {
  const auto spec = desk::command_spec(command);
  auto* button =
      new wxButton{parent, wxID_ANY, to_wx(label.empty() ? std::string{spec.label} : label)};
  button->SetToolTip(to_wx(tooltip_words(spec)));
  button->Bind(wxEVT_BUTTON, [run = std::move(run), command](wxCommandEvent&) { run(command); });
  return button;
}

}  // namespace sparewell::desktop
