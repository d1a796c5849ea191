/// Writes a clinic as the folder of CSV files that the program imports (RFC 4180, UTF-8).
#pragma once

#include <filesystem>
#include <vector>

#include "clinic/clinic.hpp"
#include "planted.hpp"

namespace sparewell::sample {

/// Makes the folder when it is missing and replaces its fourteen files.
/// Throws std::runtime_error when a file cannot be written.
void write_folder(const Clinic& clinic, const std::filesystem::path& folder);

void write_planted(const std::vector<Planted>& planted, const std::filesystem::path& file);

}  // namespace sparewell::sample
