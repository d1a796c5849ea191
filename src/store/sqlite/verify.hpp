/// Looks for damage and for broken rules that span several rows.
#pragma once

#include <string>
#include <vector>

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// One sentence for each thing found; damage that stops a check is one of them.
[[nodiscard]] std::vector<std::string> find_damage(Session& session);

}  // namespace sparewell::store::sqlite
