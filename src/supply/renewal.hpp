/// How many times one unit is replaced by another of its item in an interval: a renewal process in
/// wear time, cut off when the patient leaves the item.
#pragma once

#include <array>
#include <vector>

#include "clinic/date.hpp"
#include "supply/fresh_counts.hpp"
#include "supply/pmf.hpp"
#include "wear/other_endings.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

/// Endings after which the same item is handed out again, as after wear.
inline constexpr std::array<EndReason, 2> same_item_reasons{EndReason::lost, EndReason::recall};

/// -log of the chance that in `days` days no reason comes up that ends the line: any but wear and
/// same_item_reasons.
[[nodiscard]] double leaving_hazard(const wear::OtherEndings& others, double days);

/// Replacements of one unit by its own item in (today, end]. It wears out by its remaining life, or
/// is lost or recalled at the rates in `others`; each time it is replaced at once by a fresh one
/// with the same shape, scale and rates that is worn as the old one was. Any other ending (resized,
/// reaction, upgrade, returned, deceased, other) is the patient's and not the part's: it comes at
/// its rate whatever was replaced before, and ends the line.
///
/// All of it is mixed over the person's multiplier: what comes after the first replacement over a
/// few Gauss points of its law given when that replacement came. The first is also mixed over what
/// is not known of the law and the loss rate; those after it see the best estimate of both, losses
/// as uniform in wear time.
/// P(N >= n) is within 4e-5 of exact for shapes from 1 to 4 (1e-5 while the interval is shorter
/// than half the scale, the usual case), 1e-4 down to shape 0.7. The masses sum to 1.
[[nodiscard]] Pmf replacements(const wear::UnitLife& life, Date end, FreshCountsCache& fresh,
                               const wear::OtherEndings& others = {});

/// P(N >= 1), P(N >= 2), ... of replacements in so many days after today, a whole number or not;
/// none when there are no days.
[[nodiscard]] std::vector<double> replacement_tails(const wear::UnitLife& life, double days,
                                                    FreshCountsCache& fresh,
                                                    const wear::OtherEndings& others = {});

/// The count with these tails, which may be off by rounding: they are made to fall and to lie
/// between 0 and 1. The masses sum to 1 by construction.
[[nodiscard]] Pmf pmf_of_tails(const std::vector<double>& tails);

/// P(N >= 1) of replacements: the chance that the unit wears out, is lost or recalled by the end of
/// `end` before anything else ends it.
[[nodiscard]] double chance_of_replacement(const wear::UnitLife& life, Date end,
                                           const wear::OtherEndings& others);

/// No less than chance_of_replacement, and little more while the line hardly can have ended;
/// quicker.
[[nodiscard]] double at_most_replaced(const wear::UnitLife& life, Date end,
                                      const wear::OtherEndings& others);

/// The part of the mean of replacements in `days` >= 0 days that is for losses and recalls; the
/// same for every unit, worn or not.
[[nodiscard]] double expected_losses(const wear::OtherEndings& others, double days);

}  // namespace sparewell::supply
