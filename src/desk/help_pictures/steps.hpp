/// Steps of work as boxes with arrows between them.
#pragma once

#include <string>
#include <vector>

#include "desk/help_pictures/diagram.hpp"

namespace sparewell::desk {

/// From the only box of a stage arrows go to every box of the next. Only the last stage may have
/// several boxes.
struct StepDiagram {
  std::vector<std::vector<WordBox>> stages;
  bool back = false;  ///< a dashed arrow goes from the last box of all back to the stage before it
};

/// Stages from left to right where there is room, else from top to bottom. Every box is a stop and
/// a row of the table.
[[nodiscard]] picture::Maker steps_picture(StepDiagram steps);

}  // namespace sparewell::desk
