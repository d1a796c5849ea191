/// A budget as a person types it.
#pragma once

#include <optional>
#include <string>

#include "clinic/money.hpp"
#include "clinic/refusal.hpp"

namespace sparewell::desk {

/// No budget where nothing is written. Refuses what is no amount in this currency.
[[nodiscard]] Expected<std::optional<Money>> budget_typed(const std::string& text,
                                                          const Currency& currency);

}  // namespace sparewell::desk
