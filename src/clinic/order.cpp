#include "clinic/order.hpp"

namespace sparewell {

template <>
std::span<const std::string_view> words<OrderState>() {
  static constexpr std::array<std::string_view, 3> names{"draft", "placed", "cancelled"};
  return names;
}

}  // namespace sparewell
