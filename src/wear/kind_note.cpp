#include "wear/kind_note.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "clinic/say.hpp"

namespace sparewell::wear {
namespace {

constexpr double largest_theta = 10;
const double largest_beta = std::log(20);
constexpr double longest_life = 1000 * 365.25;  // days of reference use

/// In the order of the factors.
constexpr std::array<const char*, factor_count> factor_words{
    to_say("activity"),     to_say("kneeling hours"), to_say("wear hours"),
    to_say("sweating low"), to_say("sweating high"),  to_say("impact sport")};

bool is_too_long(const auto& scales) {
  return std::ranges::any_of(scales, [](const auto& entry) { return entry.second > longest_life; });
}

}  // namespace

std::string runaway_note(const KindLife& life) {
  const bool differ_too_much = life.theta > largest_theta;
  if (differ_too_much && life.wear_endings > 0) {
    return say(
        "Some patients have nearly all worn-out {}s, so how much patients differ has no sound "
        "estimate; check whether endings are recorded for all of them.",
        shown_word(life.kind));
  }
  for (std::size_t f = 0; f < factor_count; ++f) {
    if (std::abs(life.beta[f]) < largest_beta) continue;
    return say(
        "The factor {} separates the {}s that wore out from those that did not, so its effect has "
        "no sound estimate; check whether endings are recorded for all patients.",
        said(factor_words.at(f)), shown_word(life.kind));
  }
  if (differ_too_much || is_too_long(life.scale) || is_too_long(life.item_scale)) {
    return say(
        "So few {}s wore out for the time they were worn that their life has no sound estimate; "
        "check whether endings are recorded.",
        shown_word(life.kind));
  }
  return {};
}

}  // namespace sparewell::wear
