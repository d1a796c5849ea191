/// The one place where a window turns a failure into words.
#pragma once

#include <exception>
#include <string>

namespace sparewell::desk {

/// One or two sentences: what happened, and what to do where that is known. `failure` is not null.
[[nodiscard]] std::string describe_failure(const std::exception_ptr& failure);

}  // namespace sparewell::desk
