#include "clinic/stock.hpp"

#include <algorithm>

namespace sparewell {

template <>
std::span<const std::string_view> words<MovementKind>() {
  static constexpr std::array<std::string_view, 7> names{
      to_say("receipt"),          to_say("issue"),     to_say("return"),    to_say("transfer"),
      to_say("count correction"), to_say("write-off"), to_say("quarantine")};
  return names;
}

bool is_quarantine(std::string_view place) {
  static constexpr std::string_view wanted = "quarantine";
  const auto same = [](char a, char b) {
    return (a >= 'A' && a <= 'Z' ? static_cast<char>(a - 'A' + 'a') : a) == b;
  };
  return !std::ranges::search(place, wanted, same).empty();
}

}  // namespace sparewell
