/// Who is newly affected after a change to substances, in words.
#pragma once

#include <string>
#include <vector>

#include "desk/sensitivity_work.hpp"

namespace sparewell::desk {

/// "worn", "booked", "on order": for files that programs read.
[[nodiscard]] std::string holding_words(care::Holding holding);

/// What was done, how many were examined, and a line for each that is newly affected; the caution
/// last where there is one.
[[nodiscard]] std::vector<std::string> reexamined_lines(const Reexamined& change,
                                                        const ClinicIndex& index);

}  // namespace sparewell::desk
