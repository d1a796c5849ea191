#include "billing/money_shares.hpp"

#include <algorithm>
#include <numeric>

namespace sparewell::billing {

std::vector<std::int64_t> shares(std::int64_t total, std::span<const int> parts) {
  std::vector<std::int64_t> shared(parts.size(), 0);
  const std::int64_t whole = std::accumulate(parts.begin(), parts.end(), std::int64_t{0});
  if (whole == 0) {
    shared.front() = total;
    return shared;
  }
  const std::int64_t sign = total < 0 ? -1 : 1;
  const std::int64_t amount = sign * total;
  // By quotient and rest, so that large amounts times large parts do not overflow.
  std::vector<std::int64_t> rests(parts.size());
  std::int64_t left = amount;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::int64_t of_rest = amount % whole * parts[i];
    shared[i] = amount / whole * parts[i] + of_rest / whole;
    rests[i] = of_rest % whole;
    left -= shared[i];
  }
  std::vector<std::size_t> order(parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order,
                           [&](std::size_t a, std::size_t b) { return rests[a] > rests[b]; });
  for (std::size_t i = 0; left > 0; ++i, --left) ++shared[order[i]];
  for (auto& share : shared) share *= sign;
  return shared;
}

}  // namespace sparewell::billing
