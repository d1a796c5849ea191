#include "desktop/command_menu.hpp"

#include <memory>

#include <wx/accel.h>

#include "desktop/text.hpp"
#include "desktop/widgets/command_button.hpp"

namespace sparewell::desktop {
namespace {

using desk::Command;

wxString with_key(const desk::CommandSpec& spec) {
  auto text = to_wx(spec.label);
  if (!spec.key.empty()) text += "\t" + to_wx(spec.key);
  return text;
}

int accelerator_flags(int modifiers) {
  int flags = wxACCEL_NORMAL;
  if (modifiers & wxMOD_CONTROL) flags |= wxACCEL_CTRL;
  if (modifiers & wxMOD_ALT) flags |= wxACCEL_ALT;
  if (modifiers & wxMOD_SHIFT) flags |= wxACCEL_SHIFT;
  return flags;
}

}  // namespace

int command_id(Command command) {
  // The toolkit places or names some commands by their standard ids.
  if (command == Command::quit) return wxID_EXIT;
  if (command == Command::about) return wxID_ABOUT;
  return wxID_HIGHEST + 1 + static_cast<int>(command);
}

wxMenuBar* make_menu_bar() {
  auto* bar = new wxMenuBar;
  wxMenu* menu = nullptr;
  std::optional<desk::Menu> current;
  for (const auto& spec : desk::command_table()) {
    if (spec.menu != current) {
      menu = new wxMenu;
      bar->Append(menu, to_wx(desk::menu_title(spec.menu)));
      current = spec.menu;
    }
    if (spec.starts_group) menu->AppendSeparator();
    menu->Append(command_id(spec.command), with_key(spec), to_wx(spec.help));
  }
  return bar;
}

std::optional<Command> command_of_key(const wxKeyEvent& event) {
  const int pressed = accelerator_flags(event.GetModifiers());
  for (const auto& spec : desk::command_table()) {
    if (spec.key.empty()) continue;
    const std::unique_ptr<wxAcceleratorEntry> key{wxAcceleratorEntry::Create(with_key(spec))};
    if (key && key->GetKeyCode() == event.GetKeyCode() && key->GetFlags() == pressed) {
      return spec.command;
    }
  }
  return std::nullopt;
}

}  // namespace sparewell::desktop
