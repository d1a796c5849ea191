/// What the window remembers from one run to the next: nothing about patients.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "desk/ways.hpp"
#include "desk/window_layout.hpp"

namespace sparewell::desk {

struct Remembered {
  std::string clinic_file;    ///< the last one opened; "" when there was none
  std::string orders_folder;  ///< where workbooks were last written; "" when never
  std::string import_folder;  ///< last imported
  std::string page;           ///< its name, see Page::name; "" for the first one
  int width = 0;              ///< of the window, in device-independent pixels; 0 when not known
  int height = 0;
  bool maximised = false;
  Ways ways;
  WindowLayout layout;

  friend bool operator==(const Remembered&, const Remembered&) = default;
};

/// A missing, unreadable or damaged file gives the defaults: a lost memory must not stop the
/// program.
[[nodiscard]] Remembered recall(const std::filesystem::path& file);
/// Makes the folder when it is missing; false when it could not be written.
bool remember(const Remembered& remembered, const std::filesystem::path& file);

}  // namespace sparewell::desk
