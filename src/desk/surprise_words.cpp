#include "desk/surprise_words.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string odds_words(double chance) {
  if (chance > 0.1) return chance_words(chance);
  // Smaller numbers would promise more than the model knows.
  if (chance < 1e-6) return said("less than once in 1,000,000 times");
  return said("once in ") + count_words(std::lround(1 / chance), "time", "times");
}

std::string flags_words(const std::vector<wear::EarlyEndings>& tested, const std::string& one,
                        const std::string& many) {
  const auto flagged = std::ranges::count_if(tested, &wear::EarlyEndings::flagged);
  return say("{} of {} flagged", flagged,
             count_words(static_cast<long long>(tested.size()), one, many));
}

}  // namespace

std::string early_endings_words(const wear::EarlyEndings& endings) {
  const std::string what = endings.lot.empty()
                               ? said("Item ") + endings.item.text
                               : said("Lot ") + endings.lot + " of " + endings.item.text;
  return say(
      "{}: {} of {} wore out early, {:.1f} were to be expected; so many by chance: "
      "{}. {} of {} had such an ending.",
      what, endings.early, count_words(endings.units, "unit", "units"), endings.expected,
      odds_words(endings.p_value), endings.early_patients,
      count_words(endings.patients, "patient", "patients"));
}

std::string surprises_summary(const wear::Surprises& surprises) {
  std::string text =
      fmt::format("{}, {}.", flags_words(surprises.lots, said("lot tested"), said("lots tested")),
                  flags_words(surprises.items, said("item tested"), said("items tested")));
  if (surprises.lots_too_small > 0) {
    text += say(" {} of fewer than {} units could not be judged.",
                count_words(surprises.lots_too_small, "lot", "lots"), wear::fewest_early);
  }
  if (surprises.units_without_lot > 0) {
    text += say(" {} no recorded lot.",
                count_words(surprises.units_without_lot, "unit has", "units have"));
  }
  return text;
}

std::string surprises_caution() {
  return said(
      "A flag is a reason to look at the parts and to ask the maker, not proof of a defect: the "
      "patients, their use or the recorded dates may be the cause. The absence of a flag is not "
      "proof of safety.");
}

}  // namespace sparewell::desk
