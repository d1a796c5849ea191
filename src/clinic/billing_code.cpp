#include "clinic/billing_code.hpp"

#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<PayerRuleKind>() {
  static constexpr std::array<std::string_view, 12> list{to_say("at once"),
                                                         to_say("in period"),
                                                         to_say("initial only"),
                                                         to_say("early"),
                                                         to_say("confirmation"),
                                                         to_say("paper"),
                                                         to_say("replacement paper"),
                                                         to_say("included"),
                                                         to_say("side lines"),
                                                         to_say("fee"),
                                                         to_say("answer"),
                                                         to_say("submit")};
  return list;
}

}  // namespace sparewell
