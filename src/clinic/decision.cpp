#include "clinic/decision.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<Verdict>() {
  static constexpr std::array<std::string_view, 5> list{
      "conflict", "possible conflict", "not declared", "none known", "nothing recorded"};
  return list;
}

}  // namespace sparewell
