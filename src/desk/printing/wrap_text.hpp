/// Breaks text into words and lines.
#pragma once

#include <string>
#include <vector>

namespace sparewell::desk {

/// Parted at spaces.
[[nodiscard]] std::vector<std::string> words_of(const std::string& text);

}  // namespace sparewell::desk
