#include "wear/kind_note.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace sparewell::wear {
namespace {

constexpr double largest_theta = 10;
const double largest_beta = std::log(20);
constexpr double longest_life = 1000 * 365.25;  // days of reference use

std::string factor_words(std::size_t factor) {
  std::string words{factor_name(static_cast<Factor>(factor))};
  std::ranges::replace(words, '_', ' ');
  return words;
}

bool is_too_long(const auto& scales) {
  return std::ranges::any_of(scales, [](const auto& entry) { return entry.second > longest_life; });
}

}  // namespace

std::string runaway_note(const KindLife& life) {
  const bool differ_too_much = life.theta > largest_theta;
  if (differ_too_much && life.wear_endings > 0) {
    return fmt::format(
        "Some patients have nearly all worn-out {}s, so how much patients differ has no sound "
        "estimate; check whether endings are recorded for all of them.",
        word(life.kind));
  }
  for (std::size_t f = 0; f < factor_count; ++f) {
    if (std::abs(life.beta[f]) < largest_beta) continue;
    return fmt::format(
        "The factor {} separates the {}s that wore out from those that did not, so its effect has "
        "no sound estimate; check whether endings are recorded for all patients.",
        factor_words(f), word(life.kind));
  }
  if (differ_too_much || is_too_long(life.scale) || is_too_long(life.item_scale)) {
    return fmt::format(
        "So few {}s wore out for the time they were worn that their life has no sound estimate; "
        "check whether endings are recorded.",
        word(life.kind));
  }
  return {};
}

}  // namespace sparewell::wear
