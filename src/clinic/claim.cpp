#include "clinic/claim.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<Submission>() {
  static constexpr std::array<std::string_view, 3> list{to_say("original"), to_say("replacement"),
                                                        to_say("reversal")};
  return list;
}

}  // namespace sparewell
