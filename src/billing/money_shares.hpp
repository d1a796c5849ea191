/// Sharing out an amount in whole minor units.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace sparewell::billing {

/// Shares in proportion to `parts` (each 0 or more) that add up to `total` exactly: each is rounded
/// towards zero, and what is left goes in units of one to the largest remainders, earlier parts
/// first (method of the largest remainder, from memory). All of it goes to the first part where the
/// parts are all 0; there must be one.
[[nodiscard]] std::vector<std::int64_t> shares(std::int64_t total, std::span<const int> parts);

}  // namespace sparewell::billing
