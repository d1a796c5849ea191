#include "clinic/decision.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<Verdict>() {
  static constexpr std::array<std::string_view, 5> list{
      to_say("conflict"), to_say("possible conflict"), to_say("not declared"), to_say("none known"),
      to_say("nothing recorded")};
  return list;
}

}  // namespace sparewell
