#include "clinic/billing_answer.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<Answer>() {
  static constexpr std::array<std::string_view, 5> list{to_say("asked"), to_say("accepted"),
                                                        to_say("corrected"), to_say("written off"),
                                                        to_say("open again")};
  return list;
}

}  // namespace sparewell
