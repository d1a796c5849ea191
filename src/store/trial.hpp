/// A place to try out what would be written.
#pragma once

#include <memory>
#include <string>

#include "store/open.hpp"

namespace sparewell::store {

/// What the clinic file holds, in memory: what is written there changes nothing in the file and is
/// gone with the store. An older file is upgraded in memory alone. Throws as open_clinic_file.
[[nodiscard]] std::unique_ptr<Store> copy_in_memory(const std::string& path, Clock clock);

}  // namespace sparewell::store
