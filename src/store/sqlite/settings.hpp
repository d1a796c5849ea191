/// The clinic's settings as rows of key and value.
#pragma once

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// Keys that are not stored keep the value of a new ClinicSettings; unknown keys are ignored.
/// Throws StoreFailure{corrupt} for a value that cannot be read.
[[nodiscard]] ClinicSettings read_settings(Session& session);
/// Writes the keys whose value changes, and logs what they were. Keys of newer programs stay.
void write_settings(WriteSession& session, const ClinicSettings& settings);

}  // namespace sparewell::store::sqlite
