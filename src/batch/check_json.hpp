/// The checks before an issue or a booking as JSON.
#pragma once

#include "batch/json.hpp"
#include "desk/issue_check.hpp"

namespace sparewell::batch {

[[nodiscard]] Json json_of(const desk::IssueCheck& check);

}  // namespace sparewell::batch
