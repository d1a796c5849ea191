/// A button that runs a command of the program.
#pragma once

#include <functional>
#include <string>

#include "desk/commands.hpp"

class wxButton;
class wxWindow;

namespace sparewell::desktop {

/// What the command does, and its key: "All keys of the program (Shift+F1)".
[[nodiscard]] std::string tooltip_words(const desk::CommandSpec& spec);

/// With the command's label unless another is given; its help and key are the tooltip.
[[nodiscard]] wxButton* command_button(wxWindow* parent, desk::Command command,
                                       std::function<void(desk::Command)> run,
                                       const std::string& label = {});

}  // namespace sparewell::desktop
