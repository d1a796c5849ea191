#include "clinic/month_close.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<BookEntry>() {
  static constexpr std::array<std::string_view, 5> list{"part", "claim", "invoice", "receipt",
                                                        "payment"};
  return list;
}

}  // namespace sparewell
