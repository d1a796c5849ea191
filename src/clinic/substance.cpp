#include "clinic/substance.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<SubstanceRelation>() {
  static constexpr std::array<std::string_view, 3> list{to_say("is a"), to_say("same as"),
                                                        to_say("may contain")};
  return list;
}

}  // namespace sparewell
