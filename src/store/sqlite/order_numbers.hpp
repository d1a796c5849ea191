/// Numbers of the clinic's own orders.
#pragma once

#include <string>

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// "SW-2026-0001": the first number of the year after all those given out that no stored order
/// line bears either.
[[nodiscard]] std::string next_order_number(WriteSession& session, int year);

}  // namespace sparewell::store::sqlite
