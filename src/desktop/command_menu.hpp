/// Menus and keys, made from the table of commands.
#pragma once

#include <functional>
#include <optional>

#include <wx/event.h>
#include <wx/menu.h>

#include "desk/commands.hpp"

namespace sparewell::desktop {

/// The toolkit's id of a command.
[[nodiscard]] int command_id(desk::Command command);

/// A menu bar with every command of the table.
[[nodiscard]] wxMenuBar* make_menu_bar();

/// The command whose key was pressed. A list that has the focus swallows some keys before the menu
/// sees them, so the window asks here first.
[[nodiscard]] std::optional<desk::Command> command_of_key(const wxKeyEvent& event);

}  // namespace sparewell::desktop
