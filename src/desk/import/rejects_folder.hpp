/// Puts files of refused rows where they overwrite nothing.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "clinic/refusal.hpp"

namespace sparewell::desk {

/// Writes `texts` (file name to content) into `wanted`, or into "wanted-2", "wanted-3" ... when
/// that holds anything else. A folder that holds exactly these files already is used as it is.
/// Returns the folder; refuses when it cannot be written.
[[nodiscard]] Expected<std::filesystem::path> write_rejects_folder(
    const std::filesystem::path& wanted, const std::map<std::string, std::string>& texts);

}  // namespace sparewell::desk
