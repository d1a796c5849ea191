#include "desktop/widgets/command_row.hpp"

#include <wx/button.h>
#include <wx/wrapsizer.h>

#include "desktop/widgets/command_button.hpp"

namespace sparewell::desktop {

CommandRow::CommandRow(wxWindow* parent, const std::vector<desk::Command>& commands,
                       const std::function<void(desk::Command)>& run)
    : wxPanel{parent} {
  auto* sizer = new wxWrapSizer{wxHORIZONTAL, wxREMOVE_LEADING_SPACES};
  for (const auto command : commands) {
    auto* button = command_button(this, command, run);
    buttons_.emplace_back(button, command);
    sizer->Add(button, wxSizerFlags{}.Border(wxRIGHT | wxBOTTOM, FromDIP(8)));
  }
  SetSizer(sizer);
}

void CommandRow::allow_work(const desk::CommandState& state) {
  for (const auto& [button, command] : buttons_) {
    button->Enable(desk::command_spec(command).enabled(state));
  }
}

}  // namespace sparewell::desktop
