#include "desk/search/scan_burst.hpp"

#include <utility>

namespace sparewell::desk {

void ScanBurst::key(char typed, Moment at) {
  if (at - last_ > longest_gap) typed_.clear();
  typed_ += typed;
  last_ = at;
}

std::string ScanBurst::entered(Moment at) {
  auto typed = std::exchange(typed_, {});
  if (at - last_ > longest_gap || typed.size() < fewest_keys) return {};
  return typed;
}

}  // namespace sparewell::desk
