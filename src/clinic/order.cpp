#include "clinic/order.hpp"

namespace sparewell {

template <>
std::span<const std::string_view> words<OrderState>() {
  static constexpr std::array<std::string_view, 3> names{to_say("draft"), to_say("placed"),
                                                         to_say("cancelled")};
  return names;
}

}  // namespace sparewell
