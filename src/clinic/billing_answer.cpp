#include "clinic/billing_answer.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<Answer>() {
  static constexpr std::array<std::string_view, 5> list{"asked", "accepted", "corrected",
                                                        "written off", "open again"};
  return list;
}

}  // namespace sparewell
