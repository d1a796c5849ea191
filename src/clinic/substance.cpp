#include "clinic/substance.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<SubstanceRelation>() {
  static constexpr std::array<std::string_view, 3> list{"is a", "same as", "may contain"};
  return list;
}

}  // namespace sparewell
