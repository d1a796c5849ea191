/// Two parts that take turns and were handed out together: clinics that exchange them together
/// need two pieces at once when the first is worn out.
#pragma once

#include <array>
#include <map>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

/// Both parts ended within so many days: they were exchanged together (our choice).
inline constexpr int together_days = 3;
/// A rarer habit is taken for chance (our choice).
inline constexpr double least_together = 0.05;

/// The kinds whose parts take turns in pairs. Socks take turns too, but not in pairs.
[[nodiscard]] bool comes_in_pairs(Kind kind);

/// Units of one item, by position among its users, that are pairs: the only two of the item that a
/// patient has in use on a side, handed out on one day.
using Pairs = std::vector<std::array<std::size_t, 2>>;
/// `users` of one item, those of each patient and side next to one another.
[[nodiscard]] Pairs pairs_among(const Clinic& clinic,
                                const std::vector<const wear::LifeOfUnit*>& users);

/// For each kind that comes in pairs, how often the second part of a pair goes with the first, by
/// the pairs whose first part was worn out by `today`: Beta posterior mean of a prior that weighs
/// one pair and believes 1 in 20 (a guess).
[[nodiscard]] std::map<Kind, double> chances_together(const Clinic& clinic, Date today);

/// The first of two such parts to be worn out, as one unit. Both have seen the same wear, so its
/// hazard is twice that of one: the scale shrinks by 2^(-1/shape).
[[nodiscard]] wear::LifeOfUnit first_of_two(const wear::LifeOfUnit& one);

}  // namespace sparewell::supply
