#include "clinic/remittance.hpp"

#include <array>
#include <charconv>

#include <fmt/format.h>

namespace sparewell {
namespace {

/// The parts between colons; empty when there are none.
std::vector<std::string_view> parts_of(std::string_view text) {
  std::vector<std::string_view> parts;
  while (true) {
    const auto colon = text.find(':');
    parts.push_back(text.substr(0, colon));
    if (colon == std::string_view::npos) return parts;
    text.remove_prefix(colon + 1);
  }
}

}  // namespace

template <>
std::span<const std::string_view> words<RemittanceEntry>() {
  static constexpr std::array<std::string_view, 3> list{"line", "claim", "provider"};
  return list;
}

std::optional<Adjustment> parse_adjustment(std::string_view text, const Currency& currency) {
  const auto parts = parts_of(text);
  if (parts.size() < 3 || parts.size() > 4 || parts[0].empty() || parts[1].empty()) return {};
  const auto amount = parse_money(parts[2], currency);
  if (!amount) return {};
  Adjustment made{std::string{parts[0]}, std::string{parts[1]}, *amount, {}};
  if (parts.size() == 4) {
    int quantity = 0;
    const auto* end = parts[3].data() + parts[3].size();
    const auto read = std::from_chars(parts[3].data(), end, quantity);
    if (read.ec != std::errc{} || read.ptr != end) return {};
    made.quantity = quantity;
  }
  return made;
}

std::string adjustment_text(const Adjustment& adjustment) {
  auto text =
      fmt::format("{}:{}:{}", adjustment.group, adjustment.reason, plain_text(adjustment.amount));
  if (adjustment.quantity) text += fmt::format(":{}", *adjustment.quantity);
  return text;
}

}  // namespace sparewell
