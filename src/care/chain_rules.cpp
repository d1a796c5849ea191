#include "care/chain_rules.hpp"

#include <algorithm>
#include <array>

namespace sparewell {

template <>
std::span<const std::string_view> words<care::Function>() {
  static constexpr std::array<std::string_view, 9> list{
      to_say("locking liner"), to_say("cushion liner"), to_say("liner with seal"),
      to_say("sleeve"),        to_say("pin"),           to_say("lock"),
      to_say("valve"),         to_say("pump"),          to_say("plain liner")};
  return list;
}

}  // namespace sparewell

namespace sparewell::care {
namespace {

bool holds(std::span<const Function> functions, Function function) {
  return std::ranges::find(functions, function) != functions.end();
}

}  // namespace

std::vector<Function> ChainRules::functions_of(const Item& item) const {
  std::vector<Function> made;
  for (const FunctionPart& part : parts) {
    if (part.kind != item.kind) continue;
    if (!part.attachment || *part.attachment == item.attachment) made.push_back(part.function);
  }
  return made;
}

const SuspensionWay* ChainRules::way_of(Suspension suspension,
                                        std::span<const Function> held) const {
  const SuspensionWay* best = nullptr;
  std::pair<std::ptrdiff_t, std::ptrdiff_t> most{};
  for (const SuspensionWay& way : ways) {
    if (way.suspension != suspension) continue;
    const auto there =
        std::ranges::count_if(way.needed, [&](Function function) { return holds(held, function); });
    const auto lacks = std::ssize(way.needed) - there;
    // Where nothing is there yet, the order of preference decides.
    const std::pair has{there, there > 0 ? -lacks : 0};
    if (best != nullptr && has <= most) continue;
    best = &way;
    most = has;
  }
  return best;
}

bool ChainRules::has_work(Function function, Suspension suspension) const {
  return std::ranges::any_of(ways, [&](const SuspensionWay& way) {
    return way.suspension == suspension &&
           (holds(way.needed, function) || holds(way.allowed, function));
  });
}

bool ChainRules::is_threaded(const Item& item) const {
  return std::ranges::any_of(functions_of(item),
                             [&](Function function) { return holds(threaded, function); });
}

}  // namespace sparewell::care
